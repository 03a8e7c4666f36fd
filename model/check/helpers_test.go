package check

import "splaywright/model/measure"

func measureAngle(degrees float64) measure.Angle { return measure.Angle(degrees) * measure.Degree }
func measureLength(mm float64) measure.Length    { return measure.Length(mm) }

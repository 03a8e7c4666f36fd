package joint

import "splaywright/model/measure"

// Spline is the loose tongue of a mitre: how its grooves lie and how much wood they leave.
type Spline struct {
	Part      string         // id of the spline
	Thickness measure.Length // of spline and groove
	Width     measure.Length // across the joint; each groove is half as deep, square to the mitre
	Inset     measure.Length // on the mitre, from its inner arris to the groove
	Mitre     measure.Length // width of the mitre, from arris to arris, square to the corner
	// Low and High are what the grooves stay short of the lower and of the upper edge, along the inner
	// arris; 0 = they run out there.
	Low, High measure.Length
	Left      [2]Faces // the least wood between groove and face, on the first and the second board
	// Tilt of the groove away from square to the boards' faces, Turn of the corner away from square to
	// their edges: the settings of a saw that cuts the grooves with the boards flat.
	Tilt, Turn [2]measure.Angle
}

// Keys are slips in slots sawn across the outer arris of a mitre, square to the corner.
type Keys struct {
	Thickness measure.Length // of a key and of its slot
	Depth     measure.Length // of the slots, from the outer arris
	Length    measure.Length // of a key on the floor of its slot
	Left      measure.Length // wood between the floor of a slot and the corner's inner line
	Pitch     measure.Length
	At        []measure.Length // middles of the slots up the outer arris, from the lower edge
	// Cradle is how far either side of the cradle in which the corner lies at the saw rises from the
	// table; Turn how far the edges of the two boards stand away from square to the blade in it.
	Cradle measure.Angle
	Turn   [2]measure.Angle
}

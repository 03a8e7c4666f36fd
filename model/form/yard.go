package form

import "splaywright/model/measure"

// Yard is what a yard sells of one timber, and by what price.
type Yard struct {
	Timber       string           // "" = the design's
	Grade        string           // of hardwood, one of timber.GradeNames; "" = not told
	Sold         string           // in the yard's words: "5/4"; softwood "1 x 8"; "" = whatever the parts need
	Lengths      []measure.Length // none = common ones
	Widths       []measure.Length // of hardwood, and of softwood without a width in its words, its nominal ones; none = common ones
	PerBoardFoot float64          // price; 0 = that of the timber or of the design's wood
	PerFoot      float64          // price of a foot of length, instead
}

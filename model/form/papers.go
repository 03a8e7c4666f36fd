package form

import (
	"slices"

	"splaywright/model/measure"
)

// Papers is how sheets are made, and which papers are written.
type Papers struct {
	Sheet      string   // one of Sheets
	Projection string   // "first", "third"
	Only       []string // of PaperNames; none = all but the patterns
	As         []string // of PaperKinds; none = all but single PDFs
	Patterns   Patterns
	Block      TitleBlock

	// Where the pictorial is seen from: the eye above the floor, the eye level from the plumb line through the middle
	// of the piece (0 = chosen to suit the piece), and how far one has gone round from the front, to the right.
	EyeHeight, EyeDistance measure.Length
	Turn                   *measure.Angle
	NoBottom               bool // no view from below

	// Tongue is the code of the language that the papers are printed in; "" = that of whoever prints them.
	Tongue string
}

// Patterns is how full-size patterns are laid out; what is 0 takes the usual value.
type Patterns struct {
	On              bool           // written with the other papers
	BarX, BarY      measure.Length // what the bars of 100 mm measured on a printed sheet, across and down
	Margin, Overlap measure.Length // what the printer leaves blank; of neighbouring sheets
}

// TitleBlock is what a person writes into the title block; what is left empty stays free for a pen.
// The words follow ISO 7200 (from memory of the standard).
type TitleBlock struct{ Owner, DrawnBy, ApprovedBy, Date, Number string }

// Sheets are the sizes of paper: ISO 216, and 8.5 × 11 and 11 × 17 in of ANSI Y14.1.
var Sheets = []string{"A4", "A3", "A2", "Letter", "Tabloid"}

// The papers that may be chosen, in their order in a set.
const (
	PaperDrawings  = "drawings"
	PaperCutList   = "cut-list"
	PaperSteps     = "steps"
	PaperSaw       = "saw-settings"
	PaperMarking   = "marking"
	PaperBoring    = "boring"
	PaperStrength  = "strength"
	PaperCost      = "cost"
	PaperFindings  = "findings"
	PaperCautions  = "cautions"
	PaperBoardPlan = "board-plan"
	PaperToBuy     = "wood-to-buy"
	PaperPatterns  = "patterns"
)

// PaperNames are the papers that may be chosen.
var PaperNames = []string{PaperDrawings, PaperCutList, PaperSteps, PaperSaw, PaperMarking, PaperBoring, PaperStrength, PaperCost,
	PaperFindings, PaperCautions, PaperBoardPlan, PaperToBuy, PaperPatterns}

// The kinds of files that papers are written as.
const (
	AsPDF    = "pdf"
	AsSingle = "single-pdfs" // a file for each paper
	AsSVG    = "svg"
	AsPNG    = "png"
	AsCSV    = "csv"
	AsXLSX   = "xlsx"
	AsHTML   = "html"
	AsJSON   = "json"
)

// PaperKinds are the kinds of files that may be chosen.
var PaperKinds = []string{AsPDF, AsSingle, AsSVG, AsPNG, AsCSV, AsXLSX, AsHTML, AsJSON}

// Wants tells whether a paper is to be written.
func (p Papers) Wants(name string) bool {
	switch {
	case name == PaperPatterns && p.Patterns.On:
		return true
	case len(p.Only) == 0:
		return name != PaperPatterns
	}
	return slices.Contains(p.Only, name)
}

// WantsAs tells whether papers are to be written as a kind of file.
func (p Papers) WantsAs(kind string) bool {
	if len(p.As) == 0 {
		return kind != AsSingle
	}
	return slices.Contains(p.As, kind)
}

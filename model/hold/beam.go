// Package hold reckons whether a piece will hold: how far its top sags under a person, what leaning
// sides push outward, how its wood moves with the seasons, and how near it is to tipping. Every
// figure states its formula, its limit and where both come from.
//
// Forces are newtons, lengths millimetres, stresses and stiffnesses megapascals.
package hold

// Beam is a board that bends: its width, its height in the direction of the load, and its wood.
type Beam struct {
	Width, Height float64
	MOE, MOR      float64
}

// inertia is the second moment of the section, mm⁴.
func (b Beam) inertia() float64 { return b.Width * b.Height * b.Height * b.Height / 12 }

// Support says how the ends are held and the load lies, with the two factors of the deflection.
type Support struct{ Bending, Shear float64 }

// The cases of FPL-GTR-190 Table 9-1, https://fliphtml5.com/kbpub/hdrb/Wood_Handbook/217 .
var (
	UniformOnTwo   = Support{5. / 384, 1. / 8}
	MiddleOnTwo    = Support{1. / 48, 1. / 4}
	UniformClamped = Support{1. / 384, 1. / 8}
	MiddleClamped  = Support{1. / 192, 1. / 4}
	EndOfOne       = Support{1. / 3, 1} // a cantilever with the load at its end
)

// shearShare is the shear modulus over the modulus of elasticity: a sixteenth where it is not known
// better (common practice).
const shearShare = 1. / 16

// Sag is the deflection under a total load over a span, bending and shear (FPL-GTR-190 chapter 9):
// k_b·W·L³/(E·I) + k_s·W·L/(G·A′) with A′ = 5bh/6.
func (b Beam) Sag(s Support, load, span float64) float64 {
	shear := b.MOE * shearShare * 5 * b.Width * b.Height / 6
	return s.Bending*load*span*span*span/(b.MOE*b.inertia()) + s.Shear*load*span/shear
}

// MiddleStress is the greatest bending stress under a load in the middle of a span on two supports.
func (b Beam) MiddleStress(load, span float64) float64 {
	return load * span / 4 * b.Height / 2 / b.inertia()
}

// UniformStress is the same for a load spread evenly.
func (b Beam) UniformStress(load, span float64) float64 {
	return load * span / 8 * b.Height / 2 / b.inertia()
}

// Together is how beams that bend side by side share a load: each by its stiffness. The sag is that
// of any of them under its share.
func Together(beams []Beam, load float64) []float64 {
	all := 0.0
	for _, b := range beams {
		all += b.MOE * b.inertia()
	}
	out := make([]float64, len(beams))
	for i, b := range beams {
		out[i] = load * b.MOE * b.inertia() / all
	}
	return out
}

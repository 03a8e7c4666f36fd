// Package timber knows what a species of wood weighs and how hard and strong it is. Every
// figure stands in assets/species.csv beside its source.
package timber

// Wood tells hardwoods from softwoods, which take different pilot holes and dovetail slopes.
type Wood string

// The two kinds of wood.
const (
	Hardwood Wood = "hardwood"
	Softwood Wood = "softwood"
)

// Species is one row of the table: averages of clear wood at 12 % moisture.
type Species struct {
	Name    string
	Aliases []string
	Wood    Wood

	SG        float64 // oven-dry weight over volume, water = 1
	GreenSG   bool    // SG refers to the green volume, not to the volume at 12 % moisture
	Density12 float64 // kg/m³ at 12 % moisture, water included
	Janka     float64 // side hardness, N; 0 = not known
	MOE       float64 // modulus of elasticity, MPa
	MOR       float64 // modulus of rupture, MPa

	// Read names the figures that were read in the source ("SG", "MOR", "MOE", "hardness");
	// those not named are remembered from the base table and less sure.
	Read   []string
	Source string
}

// Sure tells whether the named figure ("SG", "MOR", "MOE", "hardness") was read in the source.
func (s Species) Sure(figure string) bool {
	for _, r := range s.Read {
		if r == figure {
			return true
		}
	}
	return false
}

// Moisture of the table, and the fibre saturation below which wood shrinks.
// 30 % is the Wood Handbook's figure, FPL-GTR-190 chapter 4.
const (
	tableMoisture   = 0.12
	fibreSaturation = 0.30
)

// density12 is the weight of a cubic metre at 12 % moisture: oven-dry weight and water on the
// volume at 12 %. FPL-GTR-190 chapter 4: 62.4·G·(1 + M/100) lb/ft³ with G on the volume at M.
func density12(sg float64, green bool) float64 {
	if green {
		sg = sgAt12(sg)
	}
	return sg * (1 + tableMoisture) * 1000
}

// sgAt12 refers a specific gravity on green volume to the smaller volume at 12 % moisture:
// G/(1 − 0.265·a·G) with a = (30 − M)/30. FPL-GTR-190 chapter 4, from memory.
func sgAt12(green float64) float64 {
	a := (fibreSaturation - tableMoisture) / fibreSaturation
	return green / (1 - 0.265*a*green)
}

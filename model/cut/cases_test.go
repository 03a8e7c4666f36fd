package cut

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// shopCase is a question that somebody asked in public, with the answer worked out beside it.
type shopCase struct {
	question string
	source   string
	answers  []answer
}

// answer is one figure: degrees, inches or whatever the question counts in, to the printed digits.
type answer struct {
	what                 string
	got, want, tolerance float64
}

func check(t *testing.T, cases []shopCase) {
	t.Helper()
	for _, c := range cases {
		t.Run(c.question, func(t *testing.T) {
			if c.source == "" || len(c.answers) == 0 {
				t.Fatal("a case needs a source and an answer")
			}
			for _, a := range c.answers {
				close(t, a.what, a.got, a.want, a.tolerance)
			}
		})
	}
}

const hundredth = 0.0051 // printed to two decimals

func flatMitre(lean float64) Setting { return Square(deg(lean), deg(lean)).Mitre() }
func flatButt(lean float64) Setting  { return Square(deg(lean), deg(lean)).Butt() }

// end is a part with one swung and tilted end, sized in inches.
func end(length, width, thickness float64, s Setting) (*part.Part, part.Cut) {
	p := &part.Part{ID: "board", Blank: part.Box{
		Length:    measure.Length(length) * measure.Inch,
		Width:     measure.Length(width) * measure.Inch,
		Thickness: measure.Length(thickness) * measure.Inch,
	}}
	return p, part.Cut{ID: "right-end", Kind: part.Crosscut, Swing: s.Swing, Tilt: s.Tilt, Normal: s.normal()}
}

func setupIn(p Position, s Setting, saw Saw) Setup {
	board, c := end(24, 6, 0.75, s)
	for _, u := range ForSaw(board, c, saw) {
		if u.Position == p {
			return u
		}
	}
	return Setup{}
}

func TestSlopedSides(t *testing.T) {
	plant, tray := flatMitre(5), flatMitre(30)
	onEdge := setupIn(OnEdge, tray, Saw{}).Setting
	asItStands := setupIn(Nested, tray, Saw{})
	butler, butlerEdge := flatMitre(12), setupIn(OnEdge, flatMitre(12), Saw{}).Setting
	uneven := Square(deg(10), deg(15))
	check(t, []shopCase{
		{"planter of sides 5 off vertical: what do gauge and blade say", "http://freeplantboxplans.com/plantbox_1.htm", []answer{
			{"gauge from 90", FromNinety(plant.Swing).Degrees(), 85.02, hundredth},
			{"tilt", plant.Tilt.Degrees(), 44.78, hundredth},
		}},
		{"tray sides ripped 30: lying flat, on edge, or leaned on the fence", "https://www.leevalley.com/en-ca/discover/woodworking/make-this-tray-to-master-the-dovetail-key", []answer{
			{"flat swing", tray.Swing.Degrees(), 26.57, hundredth},
			{"flat tilt", tray.Tilt.Degrees(), 37.76, hundredth},
			{"on edge swing", onEdge.Swing.Degrees(), 40.89, hundredth},
			{"on edge tilt", onEdge.Tilt.Degrees(), 20.70, hundredth},
			{"leaned swing", asItStands.Setting.Swing.Degrees(), 45, 1e-9},
			{"leaned tilt", asItStands.Setting.Tilt.Degrees(), 0, 1e-9},
			{"face from plumb", FromNinety(asItStands.Lean).Degrees(), 30, 1e-9},
		}},
		{"dovetailed step box splayed 12 both ways", "Popular Woodworking: a step box splayed both ways", []answer{
			{"swing", flatButt(12).Swing.Degrees(), 11.75, hundredth},
			{"tilt", flatButt(12).Tilt.Degrees(), 2.48, hundredth},
			{"corner", Square(deg(12), deg(12)).Dihedral().Degrees(), 92.48, hundredth},
			{"ends 10 up the face stand", plumb(10, 12), 9.78, hundredth},
			{"blank 10 before two rips: face", 10 - Offset(0.75, deg(12)).MM(), 9.84, hundredth},
			{"and stands", plumb(10-Offset(0.75, deg(12)).MM(), 12), 9.63, hundredth},
			{"9-1/2 plumb needs face", Along(9.5, deg(12)).MM(), 9.712, 0.00051},
			{"and width with the bevels", Along(9.5, deg(12)).MM() + Offset(0.75, deg(12)).MM(), 9.872, 0.00051},
			{"flare of each end", Offset(9.5, deg(12)).MM(), 2.019, 0.00051},
		}},
		{"front leans 10, ends 15", "http://www.woodweb.com/knowledge_base/Bevel_Cuts_for_SlopeSided_Boxes.html", []answer{
			{"front swing", uneven.Butt().Swing.Degrees(), 14.78, hundredth},
			{"end swing", uneven.Turned().Butt().Swing.Degrees(), 9.67, hundredth},
			{"butt tilt", uneven.Butt().Tilt.Degrees(), 2.58, hundredth},
			{"mitre tilt", uneven.Mitre().Tilt.Degrees(), 43.71, hundredth},
			{"mitre tilt of the neighbour", uneven.Turned().Mitre().Tilt.Degrees(), 43.71, hundredth},
		}},
		{"12 × 16 base to 16 × 20 top: which lean for a guessed height", "https://www.finewoodworking.com/forum/trapezoid-planter-please-help", []answer{
			{"lean at 12 high", FromRun(2, 12).Degrees(), 9.46, hundredth},
			{"swing", Square(FromRun(2, 12), FromRun(2, 12)).Mitre().Swing.Degrees(), 9.34, hundredth},
			{"mitre tilt", Square(FromRun(2, 12), FromRun(2, 12)).Mitre().Tilt.Degrees(), 44.23, hundredth},
			{"corner post from plumb", Square(FromRun(2, 12), FromRun(2, 12)).CornerLean().Degrees(), 13.26, hundredth},
			{"lean at 16 high", FromRun(2, 16).Degrees(), 7.13, hundredth},
			{"mitre tilt at 16", Square(FromRun(2, 16), FromRun(2, 16)).Mitre().Tilt.Degrees(), 44.56, hundredth},
		}},
		{"tote with one upright side and three that lean 15", "http://lumberjocks.com/projects/80035", []answer{
			{"upright side's end swings", Square(0, deg(15)).Butt().Swing.Degrees(), 15, 1e-9},
			{"end board there swings", Square(deg(15), 0).Butt().Swing.Degrees(), 0, 1e-9},
			{"tilt at the upright corners", Square(0, deg(15)).Butt().Tilt.Degrees(), 0, 1e-9},
			{"swing at the others", flatButt(15).Swing.Degrees(), 14.51, hundredth},
			{"tilt at the others", flatButt(15).Tilt.Degrees(), 3.84, hundredth},
		}},
		{"mitred tray with a splay of 10", "http://therepublicofwood.com/wp/2017/07/02/wooden-tray/", []answer{
			{"swing", flatMitre(10).Swing.Degrees(), 9.85, hundredth},
			{"tilt", flatMitre(10).Tilt.Degrees(), 44.14, hundredth},
		}},
		{"serving tray at 15: mitred or butted", "Making a serving tray: a workshop weblog on wordpress.com of 2014-06-09", []answer{
			{"mitre tilt", flatMitre(15).Tilt.Degrees(), 43.08, hundredth},
			{"butt tilt", flatButt(15).Tilt.Degrees(), 3.84, hundredth},
		}},
		{"does a tapered post change the 45", "https://finewoodworking.com/forum/splined-tapered-miter", []answer{
			{"lean 1", flatMitre(1).Tilt.Degrees(), 44.99, hundredth},
			{"lean 2", flatMitre(2).Tilt.Degrees(), 44.97, hundredth},
			{"lean 5", flatMitre(5).Tilt.Degrees(), 44.78, hundredth},
			{"lean 10", flatMitre(10).Tilt.Degrees(), 44.14, hundredth},
			{"lean 15", flatMitre(15).Tilt.Degrees(), 43.08, hundredth},
			{"lean 20", flatMitre(20).Tilt.Degrees(), 41.64, hundredth},
		}},
		{"butler's tray at 12, flat and on edge, and its floor", "https://craftisian.com/projects/14322-butler-s-tray", []answer{
			{"flat swing", butler.Swing.Degrees(), 11.75, hundredth},
			{"flat tilt", butler.Tilt.Degrees(), 43.76, hundredth},
			{"on edge swing", butlerEdge.Swing.Degrees(), 44.37, hundredth},
			{"on edge tilt", butlerEdge.Tilt.Degrees(), 8.45, hundredth},
			{"floor length", 21.875 - 4*math.Sin(deg(12).Radians()), 21.04, hundredth},
			{"floor width", 19.875 - 4*math.Sin(deg(12).Radians()), 19.04, hundredth},
		}},
	})
}

// plumb is how high a face of this length stands at a lean in degrees.
func plumb(face, lean float64) float64 { return face * math.Cos(deg(lean).Radians()) }

func TestLegsAndRails(t *testing.T) {
	ten, sight := Resultant(deg(10), deg(10))
	mixed, mixedSight := Resultant(deg(14), deg(10))
	far, farSight := Resultant(deg(15), deg(20))
	long, short := FromRun(1, 2.75), FromRun(1, 4)
	stands, _ := Resultant(long, short)
	saddle := FromRun(7, 24)
	both, _ := Resultant(saddle, saddle)
	check(t, []shopCase{
		{"stool legs 10 both ways: what does the saw say", "https://www.lumberjocks.com/projects/418745", []answer{
			{"lean from plumb", ten.Degrees(), 14.00, hundredth},
			{"leg inside the leaning frame", Square(deg(10), deg(10)).Butt().Swing.Degrees(), 9.85, hundredth},
			{"leg length over height", Along(1, ten).MM(), 1.0306, 0.00005},
		}},
		{"two elevation angles into one drilling angle and a line", "https://blackdogswoodshop.blogspot.com/2020/02/deriving-forumulas-for-sightline-and.html", []answer{
			{"10/10", ten.Degrees(), 14.00, hundredth}, {"10/10 line", sight.Degrees(), 45, 1e-9},
			{"14/10", mixed.Degrees(), 16.98, hundredth}, {"14/10 line", mixedSight.Degrees(), 35.3, 0.051},
			{"15/20", far.Degrees(), 24.32, hundredth}, {"15/20 line", farSight.Degrees(), 53.6, 0.051},
		}},
		{"square leg leaned both ways: how far is its level section off square", "https://www.bigsandwoodworking.com/the-trouble-with-splayed-legs/", []answer{
			{"45/45 section", offSection(45), 15, 0.0051}, // 60/120, each face 15 off
			{"15/15", offSection(15), 1.92, hundredth},
			{"10/10", offSection(10), 0.86, hundredth},
			{"5/5", offSection(5), 0.22, hundredth},
		}},
		{"sawhorse from 1:2-3/4 and 1:4, leg 25-1/2: how high does it stand", "https://www.buildeazy.com/sawhorse-2.php", []answer{
			{"first slope", long.Degrees(), 19.98, hundredth},
			{"second slope", short.Degrees(), 14.04, hundredth},
			{"as elevations", 25.5 * math.Cos(stands.Radians()), 23.33, hundredth},
			{"as one cut after the other", plumb(plumb(25.5, long.Degrees()), short.Degrees()), 23.25, hundredth},
		}},
		{"legs at 7 on 24, let in 3/4, 24 high", "http://www.progressivegardening.com/wooden-screws/angles-from-the-square.html", []answer{
			{"slope", saddle.Degrees(), 16.26, hundredth},
			{"mark for a depth of 3/4", 0.75 / math.Tan(saddle.Radians()), 2.571, 0.00051},
			{"splayed one way", Along(24, saddle).MM(), 25.00, hundredth},
			{"the same both ways", Along(24, both).MM(), 25.96, hundredth},
			{"second slope behind 25-1/2", impliedSlope(25.5, 24, saddle), 11.8, 0.051},
		}},
		{"leg 17-1/2 flared 1-1/4: which side of the triangle is the leg", "lumberjocks.com: blog entry 86402", []answer{
			{"leg is the slope", FromSlope(1.25, 17.5).Degrees(), 4.10, hundredth},
			{"leg taken as plumb", FromRun(1.25, 17.5).Degrees(), 4.09, hundredth},
			{"flare at 4", 17.5 * math.Sin(deg(4).Radians()), 1.221, 0.00051},
			{"height lost", 17.5 - plumb(17.5, FromSlope(1.25, 17.5).Degrees()), 0.045, 0.00051},
		}},
		{"board legs at 15, 1 thick, let through the top", "https://tinyshopww.blogspot.com/2023/11/another-step-stool.html", []answer{
			{"mortise", Along(1, deg(15)).MM(), 1.035, 0.00051},
			{"opening shifts", Offset(1, deg(15)).MM(), 0.268, 0.00051},
			{"11 stands", plumb(11, 15), 10.63, hundredth},
		}},
		{"rails 1/8 short: the leg travels 2 for each 1", "http://granitemountainwoodcraft.com/category/splay-leg-stool/", []answer{
			{"splay", FromRun(1, 4).Degrees(), 14.04, hundredth},
			{"leg for 1/8 of rail", 0.125 / (2 * Offset(1, FromRun(1, 4)).MM()), 0.250, 0.00051},
		}},
		{"lectern legs turned 10 in plan under a top pitched 25", "http://www.woodweb.com/knowledge_base/Figuring_Complex_Leg_Angles_for_Furniture.html", []answer{
			{"swing", lectern().Swing.Degrees(), 24.67, hundredth},
			{"tilt", lectern().Tilt.Degrees(), 4.21, hundredth},
		}},
		{"pyramid on 26, 12 high, 17.5 to the corner: which hip", "\"Need help with miter angles\", woodworkingtalk.com", []answer{
			{"half the diagonal", 13 * math.Sqrt2, 18.385, 0.0005},
			{"base that has 17.5", 17.5 * math.Sqrt2, 24.75, hundredth},
			{"hip from level", 90 - Square(FromRun(13, 12), FromRun(13, 12)).CornerLean().Degrees(), 33.13, hundredth},
			{"hip of 17.5", FromRun(12, 17.5).Degrees(), 34.44, hundredth},
			{"hip length", Along(13*math.Sqrt2, FromRun(12, 13*math.Sqrt2)).MM(), 21.95, hundredth},
			{"and of 17.5", Along(17.5, FromRun(12, 17.5)).MM(), 21.22, hundredth},
		}},
		{"bench legs at 30, 17 high, under a forgotten 4x4", "https://rusticmodernwoman.blogspot.com/2016/06/making-bench.html", []answer{
			{"leg for 17", Along(17, deg(30)).MM(), 19.63, hundredth},
			{"stands with the bearer", plumb(19.63, 30) + 3.5, 20.5, hundredth},
			{"leg that keeps 17", Along(17-3.5, deg(30)).MM(), 15.59, hundredth},
		}},
		{"slant board, 120 in 360 taken for 15", "https://techjotdowns.blogspot.com/2021", []answer{
			{"angle", FromRun(120, 360).Degrees(), 18.43, hundredth},
			{"run that 15 needs", 120 / math.Tan(deg(15).Radians()), 447.8, 0.051},
		}},
	})
}

// offSection is how far the level section of a leg with this rake and splay is off square, each
// face taking half of it.
func offSection(degrees float64) float64 {
	lean, _ := Resultant(deg(degrees), deg(degrees))
	return (90 - LegSection(lean).Degrees()) / 2
}

// impliedSlope is the second slope, degrees, of a leg of this length that stands height with a first slope.
func impliedSlope(leg, height float64, one measure.Angle) float64 {
	t := math.Tan(one.Radians())
	return math.Atan(math.Sqrt(leg*leg/(height*height)-1-t*t)) * 180 / math.Pi
}

// lectern is the cut, in the frame of an upright leg turned 10° in plan, of a plane pitched 25°.
func lectern() Setting {
	pitch, turn := deg(25).Radians(), deg(10).Radians()
	plane := mgl64.Vec3{0, -math.Sin(pitch), math.Cos(pitch)}
	grain := mgl64.Vec3{0, 0, 1}
	width := mgl64.Vec3{-math.Sin(turn), math.Cos(turn), 0}
	face := mgl64.Vec3{math.Cos(turn), math.Sin(turn), 0}
	return SettingOf(mgl64.Vec3{plane.Dot(grain), plane.Dot(width), plane.Dot(face)}, part.Crosscut)
}

func TestDovetailsOffSquare(t *testing.T) {
	check(t, []shopCase{
		{"poplar step, legs 12, 3/4 stock: where is the baseline", "https://tinyshopww.blogspot.com/2016/11/experiment-with-angled-dovetails-poplar.html", []answer{
			{"baseline", Along(0.75, deg(12)).MM(), 0.7668, 0.00005},
			{"in 64ths", math.Round(Along(0.75, deg(12)).MM() * 64), 49, 0},
		}},
		{"baseline of 3/4 stock splayed 12 both ways", "closed forms t/cos T, t tan T beside https://www.popularwoodworking.com/techniques/compound-angle-dovetails-the-layout/", []answer{
			{"from the end", Along(0.75, flatButt(12).Tilt).MM(), 0.7507, 0.00005},
			{"inside line shifts", Offset(0.75, flatButt(12).Tilt).MM(), 0.0325, 0.00005},
		}},
		{"dovetails for a 135 corner", "Dovetails for a 135 degree corner: a weblog on write.as", []answer{
			{"baseline over thickness", Along(1, Ring(8, 0).Dihedral()-90*measure.Degree).MM(), 1.414, 0.00051},
			{"inside face starts short of the tip by", Offset(1, Ring(8, 0).Dihedral()-90*measure.Degree).MM(), 1, 1e-9},
		}},
		{"a slope written 5.1 and meant 5:1", "https://woodworkingmasterclasses.com/videos/floor-lamp/floor-lamp-episode-2/", []answer{
			{"5:1", FromRun(1, 5).Degrees(), 11.31, hundredth},
			{"over 3 in", Offset(3, FromRun(1, 5)).MM(), 0.600, 0.00051},
			{"5.1° over 3 in", Offset(3, deg(5.1)).MM(), 0.268, 0.00051},
			{"1:6", FromRun(1, 6).Degrees(), 9.46, hundredth},
			{"1:8", FromRun(1, 8).Degrees(), 7.13, hundredth},
			{"1:4", FromRun(1, 4).Degrees(), 14.04, hundredth},
		}},
		{"twelve tails in 16 with 3/8 pins: how far does a 10 slope flare in 3/4", "https://popularwoodworking.com/editors-blog/how-to-make-through-dovetails", []answer{
			{"flare of a tail", 2 * Offset(0.75, deg(10)).MM(), 0.264, 0.00051},
		}},
	})
}

func TestSettingsBeyondTheSaw(t *testing.T) {
	stops45 := Saw{MaxSwing: deg(45)}
	far := Setting{Swing: deg(57)}
	check(t, []shopCase{
		{"57 needed, the saw stops at 45: end to the fence", "If I knew I would need to remember trigonometry would I have started woodworking: a workshop weblog", []answer{
			{"swing with the end to the fence", setupIn(EndOn, far, stops45).Setting.Swing.Degrees(), 33, 1e-9},
		}},
		{"60 needed: end to the fence at 30", "http://zhurnalko.net/=woodworking/popular-woodworking/2005-04-No-147--num25", []answer{
			{"swing", setupIn(EndOn, Setting{Swing: deg(60)}, stops45).Setting.Swing.Degrees(), 30, 1e-9},
		}},
	})
	if flat := setupIn(Flat, far, stops45); !flat.SwingBeyond || flat.InRange() {
		t.Error("57 must be called beyond a saw that stops at 45")
	}
	if u := setupIn(EndOn, far, stops45); !u.InRange() {
		t.Error("33 is within the saw")
	}
	if u := setupIn(EndOn, far, Saw{}); u.Position != "" {
		t.Error("a saw that swings 60 needs no complement for 57")
	}
	steep := setupIn(OnEnd, Setting{Tilt: deg(63)}, Saw{})
	close(t, "63 of tilt stood on end", steep.Setting.Tilt.Degrees(), 27, 1e-9)
}

// Settings that were printed or used and are wrong; each must leave the corner open.
func TestPublishedMistakesDoNotClose(t *testing.T) {
	for _, tc := range []struct {
		question, source string
		lean             float64
		used             Setting
		open             float64 // degrees that the corner stays open at least
	}{
		{"board canted 45, saw set 45/45", "Compound miters: pages of a private workshop", 45, Setting{deg(45), deg(45)}, 16},
		{"8° wedge under a blade at 45", "https://www.woodmagazine.com/woodworking-how-to/shop-tips/shop-made-wedges-make-compound-miters-easy", 8.08, Setting{deg(8), deg(45)}, 1},
		{"tray at 15 with plain 15° ends", "Making a serving tray: a workshop weblog on wordpress.com of 2014-06-09", 15, Setting{deg(15), deg(45)}, 3},
		{"tapered post of 10 with plain 45s", "http://www.ridgidforum.com/forum/archive/index.php/t-12927.html", 10, Setting{0, deg(45)}, 10},
	} {
		t.Run(tc.question, func(t *testing.T) {
			c := Square(deg(tc.lean), deg(tc.lean))
			if gap := c.MitreGap(tc.used, tc.used); gap.Degrees() < tc.open {
				t.Errorf("stands open by %.2f°, want at least %g (%s)", gap.Degrees(), tc.open, tc.source)
			}
			if gap := c.MitreGap(c.Mitre(), c.Mitre()); gap > 1e-9 {
				t.Errorf("the right setting stands open by %v°", gap.Degrees())
			}
		})
	}
	canted := flatMitre(45)
	close(t, "swing of the canted board lying flat", canted.Swing.Degrees(), 35.26, hundredth)
	close(t, "its tilt", canted.Tilt.Degrees(), 30, 1e-9)
	close(t, "how far 45/45 misses", canted.Miss(Setting{deg(45), deg(45)}).Degrees(), 16.8, 0.051)
}

// An 8° wedge on the sled, blade 45, 1/2 in stock: is it good enough?
// https://www.woodmagazine.com/woodworking-how-to/shop-tips/shop-made-wedges-make-compound-miters-easy
func TestWhenIsARoundSettingGoodEnough(t *testing.T) {
	lean := measure.Angle(math.Asin(math.Tan(deg(8).Radians()))) // swing = atan(sin lean)
	close(t, "lean that the wedge makes", lean.Degrees(), 8.08, hundredth)
	right := Square(lean, lean).Mitre()
	close(t, "tilt it needs", right.Tilt.Degrees(), 44.43, hundredth)
	off := deg(45) - right.Tilt
	close(t, "too much an end", off.Degrees(), 0.57, hundredth)
	close(t, "too much a corner", 2*off.Degrees(), 1.13, hundredth)
	close(t, "gap over 1/2 in stock, in", Offset(0.5, 2*off).MM(), 0.010, 0.0005)
}

// A joint of 2 in that stands open by 1/64: 0.448° in all, and in an octagon of sixteen cuts 0.028° a cut.
// http://www.ts-aligner.com/accuratemiters.htm
func TestErrorOfACutOverAJoint(t *testing.T) {
	const all = 0.448
	close(t, "open over 2 in", Offset(2*measure.Inch, deg(all)).Inches(), 1./64, 2e-5) // the last digit of 0.448
	eight := Ring(8, 0)
	right := eight.Mitre()
	off := right
	off.Tilt += deg(all / 16)
	close(t, "a corner of two such cuts", eight.MitreGap(off, off).Degrees(), all/8, 1e-3)
	close(t, "a cut of sixteen", all/16, 0.028, 1e-9)
}

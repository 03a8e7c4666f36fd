package table

import (
	"math"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/timber"
)

// The tables of what is resawn as they are printed: walls that go round, sides that mirror each other.
func TestResawnTablesAsPrinted(t *testing.T) {
	for name, d := range map[string]form.Design{"resawn-box": formtest.LetterBox(), "resawn-stool": formtest.MirrorStool()} {
		var b strings.Builder
		for _, tb := range BoardPlan(planOf(t, d), metric) {
			if err := WriteText(&b, tb, 110); err != nil {
				t.Fatal(err)
			}
			b.WriteByte('\n')
		}
		golden(t, name+".txt", b.String())
	}
}

// A board too thin is told with what is wanted, what there is and what would do; one too thick to be planed, and parts
// of several timbers, are told as such.
func TestTooThinToResaw(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*form.Design)
		says  []string
	}{
		{"too thin", func(d *form.Design) { d.OnHand[0].Thickness = 25.39 },
			[]string{"wants 25.40 mm of thickness, 12.00 mm and 12.00 mm", "a saw cut of 1.40 mm", "baluster blank is the thickest of its timber, 25.39 mm.", "Of what is sold, 5/4 rough would do."}},
		{"too thick", func(d *form.Design) { d.Plan.Planing = 1 },
			[]string{"baluster blank is 27.00 mm thick, of which no more than 1.00 mm may be planed off."}},
		{"another timber", func(d *form.Design) { d.OnHand[0].Timber = "ash" }, []string{"No board is of black walnut."}},
		{"softwood", func(d *form.Design) {
			d.Timber, d.OnHand[0].Timber, d.OnHand[0].Thickness = "eastern white pine", "eastern white pine", 20
		}, []string{"a nominal thickness of 1 1/4 in would do"}},
		{"thicker than any", func(d *form.Design) { d.Boards.Side.Thickness = 60 }, []string{"Nothing that is commonly sold is as thick"}},
		{"two timbers", func(d *form.Design) { d.Boards.End.Timber = "ash" }, []string{"is of several timbers, black walnut and ash, and comes out of one board"}},
		{"too narrow", func(d *form.Design) { d.OnHand[0].Width = 100 }, []string{"fits no board. baluster blank comes nearest"}},
	} {
		d := formtest.LetterBox()
		d.Size.Width, d.Size.Depth = 400, 300
		d.OnHand[0].Length = 1000
		c.spoil(&d)
		text := strings.Join(WithoutPlace(planOf(t, d), metric), "\n")
		for _, want := range c.says {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is missing in\n%s", c.name, want, text)
			}
		}
	}
}

// The board that is said to do does, and the next thinner of the ladder does not: its clean thickness, with what is planed
// off one part, against both parts and the cut.
func TestWhatWouldDoDoes(t *testing.T) {
	r := planOf(t, thin())
	text := strings.Join(WithoutPlace(r, metric), "\n")
	ladder := timber.Steps(timber.HardwoodThickness)
	for i, s := range ladder {
		if !strings.Contains(text, "Of what is sold, "+s.Nominal+" rough") {
			continue
		}
		for k, fits := range map[int]bool{i: true, i - 1: false} {
			d := thin()
			d.OnHand[0].Thickness = ladder[k].Surfaced.MM() + d.Allowance.Thickness.MM()
			if r := planOf(t, d); (len(r.Plan.Misfits) == 1) != fits { // the bottom is one
				t.Errorf("%s: %+v", ladder[k].Nominal, r.Plan.Misfits)
			}
		}
		return
	}
	t.Errorf("nothing would do: %s", text)
}

func thin() form.Design {
	d := formtest.LetterBox()
	d.OnHand[0].Thickness = 12
	d.Bottom = &form.Bottom{Thickness: 60, Joint: form.ScrewedOn}
	return d
}

// Parts that lie over one another count once where wood is charged by its face, and the shares of the board add up.
func TestResawnCountsOnce(t *testing.T) {
	r := planOf(t, formtest.LetterBox())
	sum := BoardPlan(r, metric)[0].Rows[0]
	// By hand: 326 + 226 of length at 115.5 of width on a board of 760 × 150.
	q := r.Task.Demands[0]
	if want := 100 * (326 + 226) * q.Width / (760 * 150); math.Abs(*sum[5].Number-want) > 1e-9 {
		t.Errorf("parts are %.3f %% of the board, want %.3f", *sum[5].Number, want)
	}
	if got := *sum[5].Number + *sum[6].Number + *sum[7].Number; math.Abs(got-100) > 1e-9 {
		t.Errorf("the shares of the board come to %g %%", got)
	}
	// A board of 27 mm is charged as 5/4. Blanks of 320 and 220 mm, once over: not twice the wood that there is.
	b := r.Parts[0][0].Blank
	want := timber.BoardFeet(320, b.Width, 31.75) + timber.BoardFeet(220, b.Width, 31.75)
	if got := netOf(r, r.Plan.Layouts[0]); math.Abs(got-want) > 1e-9 {
		t.Errorf("%.4f board feet, want %.4f", got, want)
	}
}

// The cut list says that boards of their own are not what is bought.
func TestCutListTellsOfResawing(t *testing.T) {
	for resawn, want := range map[bool]bool{true: true, false: false} {
		d := formtest.MirrorStool()
		d.Plan.Resawn = resawn
		text := strings.Join(CutList(model.Derive(d), metric).Notes, "\n")
		// 2 (20 + 3) and a cut of 1/16 in, 1.5875
		if got := strings.Contains(text, "Resawn: 2 and 3 come out of one board, 47.59 mm thick"); got != want {
			t.Errorf("resawn %v: %s", resawn, text)
		}
	}
}

// Cautions stand where something is resawn, and only there.
func TestResawingIsCautioned(t *testing.T) {
	d := formtest.MirrorStool()
	for _, resawn := range []bool{true, false} {
		d.Plan.Resawn = resawn
		d.OnHand[1].Count = 3
		text := strings.Join(BoardPlan(planOf(t, d), metric)[2].Notes, "\n")
		for _, want := range []string{"guard", "featherboard", "push the end through with a block", "277.5 mm high"} {
			if strings.Contains(text, want) != resawn {
				t.Errorf("resawn %v: %q in\n%s", resawn, want, text)
			}
		}
	}
}

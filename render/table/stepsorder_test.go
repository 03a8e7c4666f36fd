package table

import (
	"slices"
	"strings"
	"sync"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/part"
)

// everyDerived is everyPiece derived, once for all tests.
var everyDerived = sync.OnceValue(func() map[string]*form.Piece {
	out := map[string]*form.Piece{}
	for name, d := range everyPiece() {
		out[name] = model.Derive(d)
	}
	return out
})

// eachPiece goes through every piece that can be cut, and tells its steps as one text each.
func eachPiece(t *testing.T, check func(t *testing.T, p *form.Piece, do []string, texts map[string]string)) {
	t.Helper()
	cut := 0
	for name, p := range everyDerived() {
		if p.Stopped() {
			continue
		}
		cut++
		t.Run(name, func(t *testing.T) {
			var do []string
			texts := map[string]string{}
			for _, row := range Steps(p, metric).Rows {
				do = append(do, row[1].Text)
				texts[row[1].Text] += row[2].Text + " " + row[3].Text + " "
			}
			check(t, p, do, texts)
		})
	}
	if cut < 120 {
		t.Errorf("only %d pieces can be cut", cut)
	}
}

// What a shop does before what, whatever the piece (common practice).
func TestEveryPieceIsBuiltInShopOrder(t *testing.T) {
	before := [][2]string{
		{"Plane to thickness", "Cut heavy"}, // boards leave the planer longer than they will be
		{"Cut heavy", "Mark the faces"},
		{"Mark the faces", "Cut square"}, // every cut is taken from a marked face and edge
		{"Mark the faces", "Cut the angles"},
		{"Cut the angles", "Mark and saw the tails"}, // the marks run from finished ends and edges
		{"Cut the angles", "Fit the mitres"},
		{"Fit the mitres", "Groove the mitres"}, // a shaved mitre moves its groove
		{"Fit the mitres", "Cut the groove for the bottom"},
		{"Fit the corners", "Cut the groove for the bottom"},
		{"Chop the mortises", "Cut the tenons"}, // the tenon is pared to the mortise
		{"Cut the housing", "Cut the shapes"},   // the ends still take the clamps
		{"Cut the shapes", "Dry fit"},           // the boards still lie flat
		{"Mark the seats", "Bore for the screws"},
		{"Bore for the screws", "Put the lid together"}, // pilots go through clearance holes
		{"Bore for the screws", "Dry fit"},
		{"Put the lid together", "Dry fit"},
		{"Dry fit", "Glue up"},
		{"Glue up", "Saw the key slots and glue the keys in"}, // in a corner that holds
		{"Glue up", "Plug the screw holes"},                   // the screws are home by then
		{"Plug the screw holes", "Level, ease and finish"},    // plugs are pared flush
		{"Saw the key slots and glue the keys in", "Level, ease and finish"},
		{"Drive the wedges", "Level, ease and finish"},
	}
	seen := map[string]bool{}
	eachPiece(t, func(t *testing.T, p *form.Piece, do []string, _ map[string]string) {
		for _, b := range before {
			i, k := lastIndex(do, b[0]), slices.Index(do, b[1])
			if i >= 0 && k >= 0 {
				seen[b[0]+b[1]] = true
				if i > k {
					t.Errorf("%q comes after %q: %q", b[0], b[1], do)
				}
			}
		}
		for i, d := range do { // the pins are scribed round the tails, fingers round those that they go between
			for _, both := range [...][2]string{{"Mark and saw the tails", "Transfer and cut the pins"}, {"Mark and saw the fingers", "Transfer and cut their mates"}} {
				if (d == both[0]) != (i+1 < len(do) && do[i+1] == both[1]) {
					t.Errorf("%q and %q do not follow each other: %q", both[0], both[1], do)
				}
			}
		}
		if g, w := slices.Index(do, "Glue up"), slices.Index(do, "Drive the wedges"); w >= 0 && w != g+1 {
			t.Errorf("wedges are driven while the glue is wet: %q", do)
		}
		if do[len(do)-1] != "Level, ease and finish" {
			t.Errorf("the last step is %q", do[len(do)-1])
		}
	})
	for _, b := range before {
		if !seen[b[0]+b[1]] {
			t.Errorf("no piece has both %q and %q", b[0], b[1])
		}
	}
}

func lastIndex(list []string, text string) int {
	for i := len(list) - 1; i >= 0; i-- {
		if list[i] == text {
			return i
		}
	}
	return -1
}

// Each edge is eased once, in the last step, with the reason why not before.
func TestEdgesAreEasedOnce(t *testing.T) {
	eachPiece(t, func(t *testing.T, p *form.Piece, do []string, texts map[string]string) {
		eased := slices.ContainsFunc(p.Parts, func(q *part.Part) bool { return len(q.Eased) > 0 })
		for d, text := range texts {
			if d != "Level, ease and finish" && (strings.Contains(text, "Ease") || strings.Contains(text, "Round the free edges")) {
				t.Errorf("%s: %s", d, text)
			}
		}
		last := texts["Level, ease and finish"]
		if n := strings.Count(last, "Round the free edges"); eased != (n == 1) || eased && !strings.Contains(last, "since an edge rounded earlier leaves a gap") {
			t.Errorf("edges are eased: %t, said %d times: %s", eased, n, last)
		}
	})
}

// Steps speak of nothing that the piece does not have.
func TestStepsSpeakOfWhatThePieceHas(t *testing.T) {
	eachPiece(t, func(t *testing.T, p *form.Piece, do []string, texts map[string]string) {
		all := " "
		for d, text := range texts {
			all += strings.ToLower(d+" "+text) + " "
		}
		has := func(id string) bool {
			return slices.ContainsFunc(p.Parts, func(q *part.Part) bool { return strings.HasPrefix(q.ID, id) })
		}
		joined := func(kind string) bool {
			for _, j := range p.Joints {
				if strings.Contains(j.Kind, kind) {
					return true
				}
			}
			return false
		}
		bored := slices.ContainsFunc(p.Parts, func(q *part.Part) bool {
			return slices.ContainsFunc(q.Bores, func(b part.Bore) bool { return b.Purpose == "pilot" })
		})
		for word, is := range map[string]bool{
			"bottom": has("bottom"), " lid ": has("lid"), "batten": has("batten"), "wedges": has("wedge"), "spline": has("spline"), "keys": has("key"),
			"stretcher": has("stretcher"), "apron": has("apron"), "tread": has("top-"), "stave": has("stave"), "side (": has("side-"), "feet": has("side-"),
			"mitre": joined("mitre"), "tails": joined("dovetail") || joined("finger"), "mortise": joined("tenon"), "tongue": joined("tongue"),
			"screw": bored, "pilot": bored, "opposite boards": !form.OnSides(p.Form), "a triangle": len(form.Runs(p)) > 0, "of a run": len(form.Runs(p)) > 0,
		} {
			if strings.Contains(all, word) && !is {
				t.Errorf("%q is spoken of: %s", word, all)
			}
		}
	})
}

// Screws are driven while clamps hold where they hold a glued joint, and only there: those of a bottom and of battens go in dry.
func TestScrewsAreDrivenWhereClampsHold(t *testing.T) {
	eachPiece(t, func(t *testing.T, p *form.Piece, do []string, texts map[string]string) {
		glued := p.Design.Corners.Screws != nil
		for _, r := range p.Design.Stretchers {
			glued = glued || r.Screws != nil
		}
		if got := strings.Contains(texts["Glue up"], "Drive the screws while the clamps hold"); got != glued {
			t.Errorf("said: %t, want %t: %s", got, glued, texts["Glue up"])
		}
		if p.Part("lid") != nil {
			if !strings.Contains(texts["Put the lid together"], "No glue between them") || !strings.Contains(texts["Glue up"], "The lid gets no glue") {
				t.Errorf("the lid: %s", texts["Put the lid together"])
			}
			if !strings.Contains(texts["Dry fit"], "Then the lid (6) and the battens (7, 8) as one, straight down.") {
				t.Errorf("the lid is not laid on as one: %s", texts["Dry fit"])
			}
		}
		if u := p.Design.Bottom; u != nil && u.Joint == form.ScrewedOn && !strings.Contains(texts["Glue up"], "When the glue is dry, screw the bottom on") {
			t.Errorf("the bottom: %s", texts["Glue up"])
		}
	})
}

// A bottom in a groove goes in before the last wall.
func TestTheBottomGoesInBeforeTheLastWall(t *testing.T) {
	eachPiece(t, func(t *testing.T, p *form.Piece, do []string, texts map[string]string) {
		u := p.Design.Bottom
		if u == nil || u.Joint != form.InGroove {
			return
		}
		bottom, wall := -1, -1
		for k, m := range p.Assembly.Moves {
			for _, id := range m.Parts {
				switch {
				case id == "bottom":
					bottom = k
				case strings.HasPrefix(id, "end-") || strings.HasPrefix(id, "stave-") || id == "front" || id == "back":
					wall = k
				}
			}
		}
		if bottom < 0 && !slices.Contains(p.Assembly.First, "bottom") || bottom > wall {
			t.Errorf("the bottom goes in with move %d, the last wall with %d: %+v", bottom, wall, p.Assembly.Moves)
		}
	})
}

// The way of a move is said so that it can be followed: to which side, up or down.
func TestEveryWayHasItsSide(t *testing.T) {
	eachPiece(t, func(t *testing.T, p *form.Piece, do []string, texts map[string]string) {
		for _, sentence := range strings.Split(texts["Dry fit"], ". ") {
			if !strings.HasPrefix(sentence, "Then ") || strings.Contains(sentence, "at once") || strings.HasPrefix(sentence, "Then bore") {
				continue
			}
			if !strings.Contains(sentence, "straight up") && !strings.Contains(sentence, "straight down") && !strings.Contains(sentence, " to the ") {
				t.Errorf("%q does not say which way", sentence)
			}
		}
	})
}

// Arches of unlike sides are told each with its own figures, those of like sides once for both.
func TestUnlikeShapesAreToldApart(t *testing.T) {
	d := everyPiece()["steps, through dovetail"]
	d.Features = []form.Feature{{On: "side", Kind: "arch", Width: 150, Rise: 40}}
	p := model.Derive(d)
	if p.Stopped() {
		t.Fatal(p.Findings)
	}
	for i := range p.Parts { // as if the middle side's had come out smaller
		if q := p.Parts[i]; q.ID == "side-middle" {
			q.Features[0].Width = 30
		}
	}
	got := textOf(Steps(p, metric))
	for _, want := range []string{"3, 5 Side: arch 150.0 × 40.0", "4 Side, middle: arch 150.0 × 30.0"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in %s", want, got)
		}
	}
}

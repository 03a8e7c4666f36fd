package model_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// outsidePart is a part as a general-purpose library is given it: its faces as loops of corners, mm,
// in the world.
type outsidePart struct {
	ID     string
	Wedge  bool // drives a stretcher's tenon apart: both are drawn as they are cut
	Volume float64
	Points [][3]float64
	Faces  []outsideFace
}

type outsideFace struct {
	Normal [3]float64
	Loops  [][]int32
}

// TestPiecesForALibrary writes 200 random pieces over every form and joint where SPLAYWRIGHT_PIECES says,
// for their volumes and overlaps to be measured by others; see .ci/outside.
func TestPiecesForALibrary(t *testing.T) {
	dir := os.Getenv("SPLAYWRIGHT_PIECES")
	if dir == "" {
		t.Skip("nobody asks for them")
	}
	written := 0
	for seed := uint64(1); written < 200; seed++ {
		p := model.Derive(formtest.Random(seed))
		if p.Stopped() {
			continue
		}
		var parts []outsidePart
		for _, q := range p.Parts {
			parts = append(parts, forOthers(q))
		}
		text, err := json.Marshal(map[string]any{"Title": fmt.Sprintf("%d: %s, %s", seed, p.Form, p.Design.Corners.Joint), "Parts": parts})
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("%03d.json", written)), text, 0o600); err != nil {
			t.Fatal(err)
		}
		written++
	}
}

func forOthers(q *part.Part) outsidePart {
	m := q.Solid.Flatten(solid.Flattening).Transform(q.Place)
	out := outsidePart{ID: q.ID, Wedge: q.Slip == part.Wedge, Volume: m.Volume()}
	for _, v := range m.Vertices {
		out.Points = append(out.Points, v)
	}
	for _, f := range m.Faces {
		out.Faces = append(out.Faces, outsideFace{f.Normal, f.Loops})
	}
	return out
}

package table_test

import (
	"slices"
	"testing"

	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/render/table"
)

func TestEqualPartsShareRows(t *testing.T) {
	p := model.Derive(formtest.WorkedExample())
	got := table.Same(p)
	if want := []string{"side-left", "side-right"}; !slices.Equal(got["side-right"], want) || !slices.Equal(got["side-left"], want) {
		t.Errorf("the sides share rows with %v and %v, want %v", got["side-left"], got["side-right"], want)
	}
	if !slices.Equal(got["top"], []string{"top"}) {
		t.Errorf("the top shares rows with %v", got["top"])
	}
}

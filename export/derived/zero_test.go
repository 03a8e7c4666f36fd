package derived

import (
	"bytes"
	"regexp"
	"testing"

	"splaywright/model"
	"splaywright/model/form/formtest"
)

// A zero has no sign, whatever it was multiplied with on its way.
func TestZerosHaveNoSign(t *testing.T) {
	signed := regexp.MustCompile(`[^0-9a-zA-Z"]-0[,\s\]}]`)
	for seed := range uint64(60) {
		var b bytes.Buffer
		if err := Write(&b, model.Derive(formtest.Random(seed))); err != nil {
			t.Fatal(err)
		}
		if at := signed.FindIndex(b.Bytes()); at != nil {
			t.Fatalf("piece %d: %s", seed, b.Bytes()[max(0, at[0]-80):at[1]])
		}
	}
}

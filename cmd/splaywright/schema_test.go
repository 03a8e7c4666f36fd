package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"splaywright/assets"
)

func schema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(assets.Schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("derived.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("derived.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestDerivedResultsFollowTheSchema validates every example with an outside validator.
func TestDerivedResultsFollowTheSchema(t *testing.T) {
	s := schema(t)
	for _, e := range assets.Examples() {
		t.Run(e.Name, func(t *testing.T) {
			var out, talk bytes.Buffer
			if code := run([]string{"derive", "example:" + e.Name}, strings.NewReader(""), &out, &talk); code != exitDone {
				t.Fatalf("exit %d: %s", code, talk.String())
			}
			v, err := jsonschema.UnmarshalJSON(&out)
			if err != nil {
				t.Fatal(err)
			}
			if err := s.Validate(v); err != nil {
				t.Error(err)
			}
		})
	}
}

// TestSchemaRefusesWhatTheContractDoesNotAllow makes sure that the schema can fail.
func TestSchemaRefusesWhatTheContractDoesNotAllow(t *testing.T) {
	var out, talk bytes.Buffer
	if code := run([]string{"derive", "example:" + assets.FirstExample}, strings.NewReader(""), &out, &talk); code != exitDone {
		t.Fatalf("exit %d: %s", code, talk.String())
	}
	for name, spoil := range map[string]func(m map[string]any){
		"angle unit in radians":  func(m map[string]any) { m["angle_unit"] = "rad" },
		"a part without a blank": func(m map[string]any) { delete(m["parts"].([]any)[0].(map[string]any), "blank") },
		"an unknown key":         func(m map[string]any) { m["colour"] = "red" },
		"tilt beyond a quarter turn": func(m map[string]any) {
			m["parts"].([]any)[0].(map[string]any)["cuts"].([]any)[0].(map[string]any)["tilt"] = 91.0
		},
	} {
		t.Run(name, func(t *testing.T) {
			var m map[string]any
			if err := json.Unmarshal(out.Bytes(), &m); err != nil {
				t.Fatal(err)
			}
			spoil(m)
			if err := schema(t).Validate(m); err == nil {
				t.Error("the schema let it pass")
			}
		})
	}
}

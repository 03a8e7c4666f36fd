package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"splaywright/assets"
	"splaywright/model/form"
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

// box is a design that every form with walls can be made of.
const box = `splaywright: 1
title: Box
form: %s
size: {height: 80, width: 400, depth: 250}
splay: {ends: 10}
timber: white oak
boards: {side: {thickness: 12}}
corners: {joint: %s}
%s`

// TestEveryFormFollowsTheSchema: what is derived is valid whatever the form, and when it is stopped too.
func TestEveryFormFollowsTheSchema(t *testing.T) {
	designs := map[string]string{}
	for _, f := range form.WallForms() { // the others are among the examples
		for _, j := range form.WallJoints() {
			designs[f+", "+j] = fmt.Sprintf(box, f, j, "")
		}
		for _, b := range []string{form.InGroove, form.InRabbet, form.ScrewedOn} {
			designs[f+", bottom "+b] = fmt.Sprintf(box, f, form.Mitre, "bottom: {thickness: 6, joint: "+b+"}\n")
		}
	}
	for _, e := range assets.Examples() {
		designs["stopped "+e.Name] = string(e.YAML)
		designs["measured "+e.Name] = string(e.YAML) + "came-out: {width-floor: 500 mm}\n"
	}
	s := schema(t)
	stopped := 0
	for name, text := range designs {
		var out, talk bytes.Buffer
		args := []string{"derive", "-"}
		if strings.HasPrefix(name, "stopped") {
			args = append(args, "--set", "corners.tails=200")
		}
		if strings.HasPrefix(name, "ring") {
			args = append(args, "--set", "size.staves=6")
			text = strings.Replace(text, ", depth: 250", "", 1)
		}
		switch code := run(args, strings.NewReader(text), &out, &talk); code {
		case exitStopped:
			stopped++
		case exitRefused:
			t.Errorf("%s is refused: %s", name, talk.String())
			continue
		}
		v, err := jsonschema.UnmarshalJSON(&out)
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Validate(v); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if stopped == 0 {
		t.Error("200 tails stop no piece")
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

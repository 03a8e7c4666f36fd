package file

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/word"
)

// place tells whether a design has something at the path, and otherwise which of its words is the
// first that is not understood, and what is near.
func place(path string) (wrong, why string) {
	if path == "" {
		return "", "nothing is named; a path such as size.height is expected"
	}
	at := ""
	for _, key := range strings.Split(path, ".") {
		if why := lacks(at, key); why != "" {
			return key, why
		}
		at = join(at, key)
	}
	return "", ""
}

// lacks tells why there is no key in what stands at a path; "" when there is.
func lacks(at, key string) (why string) {
	known, group := shape[pattern(at)]
	switch {
	case key == "":
		return "two points follow each other, or one stands at the end; a path such as size.height is expected"
	case at == "names" && !goodName(key):
		return badName
	case at == "names" || at == "" && key == "names":
		return ""
	case !group:
		return fmt.Sprintf("%+s holds one value, not a group", at)
	case slices.Contains(known, pattern(key)):
		return ""
	}
	return unknown(at, key, known)
}

// unknown says that there is no such key and which one was perhaps meant.
func unknown(at, key string, known []string) string {
	switch {
	case slices.Equal(known, []string{"#"}):
		return "items of a list go by their number, from 0"
	case at != "":
		return fmt.Sprintf("there is no such key in %+s; %s", at, suggest(key, known))
	}
	if deeper := elsewhere(key); len(deeper) > 0 {
		return fmt.Sprintf("there is no such key at the top of a design; did you mean %s?", orOf(deeper))
	}
	return fmt.Sprintf("there is no such key at the top of a design; %s", suggest(key, known))
}

// elsewhere lists the paths, outside lists, that end in a key.
func elsewhere(key string) (paths []string) {
	for group, keys := range shape {
		if group != "" && !strings.Contains(group, "#") && slices.Contains(keys, key) {
			paths = append(paths, join(group, key))
		}
	}
	slices.Sort(paths)
	return paths
}

// orOf lists choices: "a, b or c".
func orOf(s []string) string {
	if len(s) < 2 {
		return strings.Join(s, "")
	}
	return strings.Join(s[:len(s)-1], ", ") + " or " + s[len(s)-1]
}

// suggest lists the known words, and first the one that was perhaps meant.
func suggest(word string, known []string) string {
	all := strings.Join(known, ", ")
	if near := Nearest(word, known); near != "" {
		return fmt.Sprintf("did you mean %+s? There are %+s", near, all)
	}
	return fmt.Sprintf("there are %+s", all)
}

// Nearest gives the known word that a mistyped one is nearest to, "" when none is near: half of the
// letters or more differ.
func Nearest(typed string, known []string) string {
	if len(typed) > 40 { // no slip of the pen
		return ""
	}
	best, near := "", 1+len(typed)/2
	for _, k := range known {
		if d := word.Distance(typed, k); d < near {
			best, near = k, d
		}
	}
	return best
}

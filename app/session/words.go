package session

import (
	"strconv"
	"strings"
)

// Words says a path of the design file in words: "stretchers.0.below-top" is
// "stretcher 1, below top".
func Words(path string) string {
	var out []string
	for _, key := range strings.Split(path, ".") {
		if i, err := strconv.Atoi(key); err == nil && len(out) > 0 {
			last := len(out) - 1
			out[last] = one(out[last]) + " " + strconv.Itoa(i+1)
			continue
		}
		out = append(out, strings.ReplaceAll(key, "-", " "))
	}
	if len(out) > 1 && (out[0] == "size" || out[0] == "boards") {
		out = out[1:] // "height" and "top, thickness" say enough
	}
	return strings.Join(out, ", ")
}

// one names an item of a list by the list's name.
func one(list string) string {
	if i := strings.LastIndex(list, "."); i >= 0 {
		list = list[i+1:]
	}
	return strings.TrimSuffix(list, "s")
}

package table

import "regexp"

// negative is a hyphen that stands for a minus: before a figure, and behind nothing that it could join to it.
var negative = regexp.MustCompile(`(^|[\s(])-(\d)`)

// minus gives figures below nothing the sign that is made for them, U+2212, which is as wide as a plus.
func minus(text string) string { return negative.ReplaceAllString(text, "$1−$2") }

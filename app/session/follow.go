package session

import (
	"fmt"
	"math"
	"regexp"
	"strconv"

	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/model/stock"
)

// extent is the path of a board's length or width.
var extent = regexp.MustCompile(`^(boards-on-hand|boards-to-buy)\.([0-9]+)\.(length|width)$`)

// follow takes the corners of a board's outline along that lie at its end, or at its far edge, as it was before its length or
// width was typed anew: they are where the board ends.
func follow(before form.Design, next *file.Document, path, text string) error {
	m := extent.FindStringSubmatch(path)
	if m == nil || text == "" {
		return nil
	}
	list, nth := before.OnHand, 0
	if m[1] == "boards-to-buy" {
		list = before.ToBuy
	}
	if nth, _ = strconv.Atoi(m[2]); nth >= len(list) {
		return nil
	}
	key, was := "x", list[nth].Length
	at := func(p stock.Point) float64 { return p.X }
	if m[3] == "width" {
		key, was, at = "y", list[nth].Width, func(p stock.Point) float64 { return p.Y }
	}
	for i, p := range list[nth].Outline {
		if math.Abs(at(p)-was) <= stock.Slack {
			if err := next.Set(fmt.Sprintf("%s.%d.outline.%d.%s", m[1], nth, i, key), text); err != nil {
				return err
			}
		}
	}
	return nil
}

package assets

import _ "embed"

// Species is the table of timbers: one row a species, with its figures and where they come
// from. Package timber reads it.
//
//go:embed species.csv
var Species []byte

// Movement is the table of how timbers shrink and swell, a row a species, with its source.
//
//go:embed movement.csv
var Movement []byte

// Sold is the table of sizes that wood is sold by, rough or nominal, and what they measure once
// surfaced, a row a size, with its source.
//
//go:embed sold.csv
var Sold []byte

// Grades is the table of the grades that hardwood is sold by and what each promises, a row a grade, with its source.
//
//go:embed grades.csv
var Grades []byte

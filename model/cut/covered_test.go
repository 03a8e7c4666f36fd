package cut

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Every published row and every open question, about angles, legs and dovetails, movement and strength, heights and
// tipping, boards and kerf, stands in covered.csv with the
// test that answers it; each of those tests is there.
func TestEveryPublishedRowHasItsTest(t *testing.T) {
	source := map[string]string{}
	for _, row := range published(t, "covered.csv") {
		folder, name, ok := strings.Cut(row["test"], " ")
		if !ok {
			t.Errorf("no folder and name: %v", row)
			continue
		}
		if _, read := source[folder]; !read {
			files, err := filepath.Glob(filepath.Join("../..", folder, "*_test.go"))
			if err != nil || len(files) == 0 {
				t.Fatalf("no tests in %s", folder)
			}
			for _, f := range files {
				text, err := os.ReadFile(f)
				if err != nil {
					t.Fatal(err)
				}
				source[folder] += string(text)
			}
		}
		if !strings.Contains(source[folder], "func "+name+"(") {
			t.Errorf("%s has no %s, which is to answer: %s", folder, name, row["what"])
		}
	}
}

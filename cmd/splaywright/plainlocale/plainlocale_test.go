package plainlocale

import "testing"

func TestALanguageIsNamedOnlyForThePlainLocale(t *testing.T) {
	for _, c := range []struct {
		why  string
		env  map[string]string
		want string
	}{
		{"plain with an encoding", map[string]string{"LANG": "C.UTF-8"}, "en"},
		{"LC_ALL wins over LANG", map[string]string{"LC_ALL": "C.utf8", "LANG": "de_DE.UTF-8"}, "en"},
		{"a language of the person's own", map[string]string{"LANG": "C.UTF-8", "LANGUAGE": "de"}, ""},
		{"German", map[string]string{"LANG": "de_DE.UTF-8"}, ""},
		{"LC_MESSAGES wins over LANG", map[string]string{"LC_MESSAGES": "fr_FR.UTF-8", "LANG": "C.UTF-8"}, ""},
		{"plain alone is understood already", map[string]string{"LANG": "C"}, ""},
		{"nothing set", nil, ""},
	} {
		got := ""
		name(func(k string) string { return c.env[k] }, func(_, v string) error { got = v; return nil })
		if got != c.want {
			t.Errorf("%s: LANGUAGE set to %q, want %q", c.why, got, c.want)
		}
	}
}

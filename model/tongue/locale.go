package tongue

import (
	"slices"
	"strings"
)

// FromLocale is the first language that the system's settings ask for and the program speaks, else
// English. get gives a setting of the environment; LANGUAGE lists languages, and of LC_ALL,
// LC_MESSAGES and LANG the first that is set counts (POSIX locale variables, and GNU gettext's manual
// for LANGUAGE).
func FromLocale(get func(string) string) string {
	locale := setting(get, "LC_MESSAGES")
	if plain := language(locale); plain == "C" || plain == "POSIX" {
		return English
	}
	for _, wish := range append(strings.Split(get("LANGUAGE"), ":"), locale) {
		if code := language(wish); slices.Contains(Codes(), code) {
			return code
		}
	}
	return English
}

// setting is what holds for one kind of setting.
func setting(get func(string) string, kind string) string {
	for _, key := range []string{"LC_ALL", kind, "LANG"} {
		if v := get(key); v != "" {
			return v
		}
	}
	return ""
}

// language is the language of a locale: "de" of "de_DE.UTF-8".
func language(locale string) string {
	if i := strings.IndexAny(locale, "_.@-"); i >= 0 {
		locale = locale[:i]
	}
	return locale
}

// Package plainlocale names a language where the locale is the plain one with an encoding, such as
// "C.UTF-8", before the window's library looks at it: the library takes "C" for a language and
// complains on standard error, even when the program only does a job at a terminal.
//
// It must be initialised before that library. Go initialises, of the packages whose imports are
// ready, the one whose path sorts first; with nothing but syscall imported, this one is ready before
// package time, which the library needs.
package plainlocale

import "syscall"

func init() { name(get, syscall.Setenv) }

func get(key string) string {
	v, _ := syscall.Getenv(key)
	return v
}

// name sets LANGUAGE, which says only which words to use: encoding and sorting stay as they are.
func name(get func(string) string, set func(key, value string) error) {
	locale := get("LC_ALL")
	for _, key := range []string{"LC_MESSAGES", "LANG"} {
		if locale == "" {
			locale = get(key)
		}
	}
	if get("LANGUAGE") == "" && len(locale) > 2 && locale[:2] == "C." {
		_ = set("LANGUAGE", "en") // where the environment cannot be changed there is only the complaint
	}
}

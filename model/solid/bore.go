package solid

func (s *Solid) drill(b []Bore) error {
	if len(b) > 0 {
		return fail("bores cannot be built yet", b[0].Tag)
	}
	return nil
}

package solid

func (k *builder) apart(rings []ring) error { return nil }
func (k *builder) hollow(b Board, rings []ring) error {
	return fail("pockets cannot be built yet", "pocket")
}
func (k *builder) ledge(a, b *layer) error { return nil }
func (s *Solid) drill(b []Bore) error {
	if len(b) > 0 {
		return fail("bores cannot be built yet", b[0].Tag)
	}
	return nil
}

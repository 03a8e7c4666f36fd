package form

const chestForm = "chest"

// chestFamily: four walls that are plumb or wider at the floor, with or without a bottom and a lid.
var chestFamily = family{
	form:     chestForm,
	walls:    true,
	defaults: chestDefaults,
	refuse:   refuseChest,
	build:    func(a *assembly) { newEnclosure(a, fourWalls(a.d, -1), -1).build() },
}

func chestDefaults(d *Design) {
	wallDefaults(d)
	lidDefaults(d)
}

func refuseChest(b *assembly) {
	refuseLid(b)
	refuseFour(b)
}

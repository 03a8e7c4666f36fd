package check

func screws(r *run) {}

# make run   installs what is missing, builds, writes the papers of an example, opens the window
# make test  installs what is missing, then runs every check
SHELL := /bin/bash
.SHELLFLAGS := -eu -o pipefail -c
GO ?= go
OUT := out
BIN := bin/splaywright
TOOL := $(GO) tool -modfile=.ci/tools.mod

.PHONY: package run test build nowindow setup setup-test lint unit thorough hunt robot times pictures outside bench papers update clean

run: setup build papers
	@if [ -n "$${DISPLAY:-}$${WAYLAND_DISPLAY:-}" ]; then \
		$(BIN) $(OUT)/reading-nook-step.yaml; \
	else \
		echo "No display here, so no window: the papers are in $(OUT)/papers."; \
	fi

build:
	$(GO) build -o $(BIN) ./cmd/splaywright

# The commands alone: pure Go, no C compiler, no display.
nowindow:
	CGO_ENABLED=0 $(GO) build -tags nowindow -o $(BIN)-nowindow ./cmd/splaywright

# An archive for a Linux desktop, with an installer in it.
package: setup
	$(GO) build -trimpath -ldflags "-s -w" -o $(OUT)/package/splaywright ./cmd/splaywright
	assets/package/pack $(OUT)/package/splaywright $(OUT)/package

papers:
	@mkdir -p $(OUT)
	@[ -f $(OUT)/reading-nook-step.yaml ] || $(BIN) new $(OUT)/reading-nook-step.yaml
	$(BIN) papers $(OUT)/reading-nook-step.yaml --to $(OUT)/papers

setup:
	@.ci/setup build

setup-test:
	@.ci/setup test

test: setup-test lint unit thorough build nowindow outside robot

lint:
	@bad=$$(gofmt -l app assets cmd export model render); [ -z "$$bad" ] || { echo "not gofmt-clean: $$bad"; exit 1; }
	$(GO) vet ./...
	$(TOOL) staticcheck ./...

# Packages whose tests draw random pieces. One commit must give one answer, so the draw begins at a set
# number; make hunt draws afresh each time.
RANDOM_ONES = $(shell grep -rl --include=*_test.go '"pgregory.net/rapid"' app cmd export model render | xargs -n1 dirname | sort -u | sed 's|^|./|')
SEED = 20261125

# Everything but the real window runs without cgo and without a display.
unit:
	CGO_ENABLED=0 LANG=en_US.UTF-8 $(GO) test -timeout 30m -tags nowindow $(filter-out $(patsubst ./%,splaywright/%,$(RANDOM_ONES)),$(shell $(GO) list -tags nowindow ./...))
	CGO_ENABLED=0 LANG=en_US.UTF-8 $(GO) test -timeout 30m -tags nowindow $(RANDOM_ONES) -rapid.seed=$(SEED)

# Looks for trouble among pieces that nobody has looked at yet; what it finds becomes a test.
hunt:
	CGO_ENABLED=0 LANG=en_US.UTF-8 $(GO) test -tags nowindow $(RANDOM_ONES) -count=1 -rapid.checks=1000 -timeout 60m

# The properties of random pieces again, over some thousands of them.
thorough:
	CGO_ENABLED=0 $(GO) test -tags nowindow ./model/form ./model/motion -rapid.checks=300 -rapid.seed=$(SEED)
	CGO_ENABLED=0 $(GO) test -tags nowindow ./render/sheet -run 'RandomPieces$$' -pieces=500 -timeout 30m
	$(GO) test ./app -run 'Soak' -timeout 30m -args -soak=10000

# The real window in a virtual display, driven by a robot.
robot: build
	.ci/robot $(BIN)

# How long the window takes; figures to read, on a machine that does nothing else.
times: build
	.ci/times $(BIN)

# The README's pictures, taken anew.
pictures: build
	.ci/pictures $(BIN)

# Figures compared with a general-purpose solid library.
outside: nowindow
	.ci/outside $(BIN)-nowindow

bench:
	CGO_ENABLED=0 $(GO) test -tags nowindow -run '^$$' -bench . -benchmem ./model/... ./render/... ./export/...

# Rewrites the golden texts; read what changed before committing it.
update:
	CGO_ENABLED=0 LANG=en_US.UTF-8 $(GO) test -tags nowindow ./... -update

clean:
	rm -rf bin $(OUT)

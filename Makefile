# What each target does is its name; `make` alone prints them.
GO ?= go
TOOLS := -modfile=.ci/tools.mod
FUZZTIME ?= 20000x

.PHONY: help build demo test check golden golden-diff bench lint race fuzz mutate tools clean

help:
	@echo "make demo    build, draw the demo house into out/, print the count"
	@echo "make test    pass every test (installs what it needs)"
	@echo "make bench   print the performance figures"
	@echo "make golden  renew golden/ (look at the change before you commit it)"
	@echo "make golden-diff  show what changed in golden/ as pictures, old beside new"
	@echo "make lint    gofumpt, go vet, staticcheck"
	@echo "make mutate  how many small changes to the code the tests notice"

build:
	$(GO) build -o bin/galewright ./cmd/galewright

demo: build
	bin/galewright draw examples/$(DEMO).toml --out out --paper arch-d --format svg,pdf
	bin/galewright count examples/$(DEMO).toml
	@echo "The sheets are in out/: open out/sheets.pdf, or out/S-001.svg in a browser."

DEMO ?= marsh-wren

# Programs that drawing tests compare against. Debian's packages; elsewhere
# install librsvg, poppler and Chromium by hand. Tests that need a missing one
# are skipped, except where CI is set.
tools:
	@sh .ci/install-tools

test: tools
	$(GO) test -timeout 30m ./... ./.ci/golden-diff

race: tools
	$(GO) test -race -timeout 60m ./...

lint:
	@out=$$($(GO) tool $(TOOLS) gofumpt -l .ci cmd plan render symbols golden examples); \
	 if [ -n "$$out" ]; then echo "gofumpt would change:"; echo "$$out"; exit 1; fi
	$(GO) vet ./... ./.ci/mutate ./.ci/golden-diff
	@$(GO) build $(TOOLS) -o bin/staticcheck honnef.co/go/tools/cmd/staticcheck && bin/staticcheck ./...

golden:
	$(GO) test -timeout 30m ./golden -update

# Every changed golden sheet beside what it was: out/golden-diff/index.html.
# make golden-diff FROM=main compares with another commit.
FROM ?= HEAD
golden-diff:
	@$(GO) run ./.ci/golden-diff -from $(FROM)

fuzz:
	@sh .ci/fuzz $(FUZZTIME)

# A sample of mutants per package: make mutate SEED=2 N=50 MUTATE=./plan/wind
SEED ?= 1
N ?= 25
MUTATE ?= $(addprefix ./plan/,geom length roofplan framing hardware placement wind timber wood steel nailing capacity loadpath schedule lumber)
mutate:
	@$(GO) run ./.ci/mutate -seed $(SEED) -n $(N) $(MUTATE)

# Rows of up to HOUSES houses in one plan; figures for benchstat. The default keeps
# within a gibibyte; HOUSES=100 wants several, and MEMORY= to be allowed them.
HOUSES ?= 30
MEMORY ?= 1GiB
bench:
	GOMEMLIMIT=$(MEMORY) $(GO) test -run '^$$' -bench . -benchmem -timeout 60m ./golden -args -houses $(HOUSES)
	GOMEMLIMIT=$(MEMORY) $(GO) test -run '^$$' -bench . -benchmem ./plan/... ./render/...

clean:
	rm -rf bin out

module galewright

go 1.26.0

require (
	codeberg.org/go-pdf/fpdf v0.12.0
	github.com/BurntSushi/toml v1.6.0
	github.com/ajstarks/svgo v0.0.0-20211024235047-1546f124cd8b
	github.com/gofrs/flock v0.13.0
	github.com/rogpeppe/go-internal v1.16.0
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.3
	github.com/spf13/pflag v1.1.0
	github.com/stretchr/testify v1.12.1
	golang.org/x/sys v0.50.0
	pgregory.net/rapid v1.3.0
)

require (
	go.yaml.in/yaml/v3 v3.0.5 // indirect
	golang.org/x/text v0.14.0 // indirect
	golang.org/x/tools v0.26.0 // indirect
)

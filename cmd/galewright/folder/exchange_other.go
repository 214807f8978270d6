//go:build !linux && !darwin

package folder

import "errors"

func exchangeFolders(_, _ string) error { return errors.ErrUnsupported }

package folder

import (
	"errors"

	"golang.org/x/sys/unix"
)

func exchangeFolders(a, b string) error {
	err := unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, unix.RENAME_EXCHANGE)
	if errors.Is(err, unix.EINVAL) { // what file systems say that cannot
		return errors.ErrUnsupported
	}
	return err
}

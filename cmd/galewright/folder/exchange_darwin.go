package folder

import "golang.org/x/sys/unix"

func exchangeFolders(a, b string) error { return unix.RenamexNp(a, b, unix.RENAME_SWAP) }

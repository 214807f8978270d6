package folder

import (
	"errors"
	"os"
	"path/filepath"
)

// exchange has two folders change names in one step; an error that is
// errors.ErrUnsupported where the system cannot.
var exchange = exchangeFolders

// swap puts the next set where the folder is, and the earlier one where the
// next one was.
func (s *Set) swap() error {
	if err := step("swap"); err != nil {
		return err
	}
	info, err := os.Stat(s.dir)
	if os.IsNotExist(err) {
		return os.Rename(s.next(), s.dir)
	}
	if err != nil {
		return err
	}
	if err := os.Chmod(s.next(), info.Mode()); err != nil {
		return err
	}
	if err := exchange(s.next(), s.dir); !errors.Is(err, errors.ErrUnsupported) {
		return err
	}
	return s.swapTwice()
}

// swapTwice is swap by renames, for systems that cannot exchange: a run that is
// killed between the first two leaves no folder, and the next one heals it.
func (s *Set) swapTwice() error {
	back := filepath.Join(s.home, backName)
	if err := move("back", s.dir, back); err != nil {
		return err
	}
	if err := move("forth", s.next(), s.dir); err != nil {
		if e := os.Rename(back, s.dir); e != nil {
			_ = s.lock.Unlock()
			s.home = "" // what is in it is not lost: the next run heals it
		}
		return err
	}
	return os.Rename(back, s.next())
}

func move(name, from, to string) error {
	if err := step(name); err != nil {
		return err
	}
	return os.Rename(from, to)
}

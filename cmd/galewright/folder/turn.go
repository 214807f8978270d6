package folder

import (
	"os"
	"path/filepath"

	"github.com/gofrs/flock"
)

// turn is the right to change what is at and beside a folder. Runs wait for it;
// of one that dies it goes to the next.
type turn struct{ lock *flock.Flock }

// wait returns when it is this run's turn. The file that is locked goes away with
// the turn, so that nothing stays beside the folder: who waited for one that is
// gone waits again.
func wait(dir string) (turn, error) {
	path := filepath.Join(filepath.Dir(dir), homePrefix(dir)+"turn")
	for {
		lock := flock.New(path)
		if err := lock.Lock(); err != nil {
			return turn{}, err
		}
		if stands(lock, path) {
			return turn{lock}, nil
		}
		_ = lock.Unlock()
	}
}

// stands tells whether the file locked is the one that is at path.
func stands(lock *flock.Flock, path string) bool {
	held, err := lock.Stat()
	if err != nil {
		return false
	}
	there, err := os.Stat(path)
	return err == nil && os.SameFile(held, there)
}

func (t turn) end() {
	kept := os.Remove(t.lock.Path())
	_ = t.lock.Unlock()
	if kept != nil { // a system that does not take an open file away
		_ = os.Remove(t.lock.Path())
	}
}

// Package pagetest helps the tests of views: houses to draw (the examples, and
// one put together by hand), pages drawn as if they were the whole set, and
// checks that hold for every sheet. Only tests import it.
package pagetest

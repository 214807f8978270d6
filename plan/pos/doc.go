// Package pos finds where each key of a TOML document stands, which the
// decoder does not tell. TOML text that the decoder has accepted flows in, an
// Index from key paths ("wall[1].opening[0].at") to line and column flows
// out. Its list of keys is the decoder's own, in the same order; a test holds
// that on the decoder's own corpus, a fuzz target on anything that decodes.
package pos

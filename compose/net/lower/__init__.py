"""Game → net, sentence by sentence. Nothing after this folder looks at a sentence again."""

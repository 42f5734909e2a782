"""The round worked out exactly, as an absorbing Markov chain."""

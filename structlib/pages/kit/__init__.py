"""What every page is made with: bench, controls, questions, proofs, words of a verdict. It knows no topic."""

"""Pictures. They take what `plan` makes and draw it; matplotlib is loaded when one is drawn, and not before."""

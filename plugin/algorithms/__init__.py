"""One file an algorithm: parameters, refusals, one call into `plan`, the writing. No formula lives here."""

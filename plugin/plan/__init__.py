"""Sky, ground and lens joined: arrays and dataclasses in and out."""

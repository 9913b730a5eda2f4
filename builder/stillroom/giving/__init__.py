"""The private side: giving list, planning, shopping and the pack. Publishing never imports it."""

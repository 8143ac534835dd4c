"""Which thing serves which need, for this person in this place: settings, bindings and what is missing."""

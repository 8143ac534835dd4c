"""The shipped catalog (exercises, things, materials, sources), its schema, loaders and checker."""

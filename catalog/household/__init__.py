"""The household file: people, places, things and wishes as TOML that a person writes and keeps."""

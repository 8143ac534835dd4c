"""What a person meets: the window (PySide6) and, in `gui.command_line`, the commands without a window."""

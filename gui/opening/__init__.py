"""Opening the window: what loads off the GUI thread, how the window is furnished, which screens it leads to."""

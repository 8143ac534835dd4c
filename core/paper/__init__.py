"""What is printed or exported: sheets, strips, calendars, tables."""

"""The stylesheet for Qt's standard controls, written from tokens; our own widgets paint themselves."""

from __future__ import annotations

from string import Template

from gui.theme.tokens import Tokens

_SHEET = Template("""
QLineEdit, QComboBox, QAbstractSpinBox, QPlainTextEdit, QDateEdit {
    background: $surface; color: $ink; border: 1px solid $control_line; border-radius: 8px;
    selection-background-color: $accent; selection-color: $on_accent;
}
QLineEdit, QAbstractSpinBox, QComboBox, QDateEdit { padding: 0 11px; min-height: 32px; }
QLineEdit, QPlainTextEdit { placeholder-text-color: $ink_soft; }
QPlainTextEdit { padding: 6px 8px; }
QLineEdit:focus, QComboBox:focus, QAbstractSpinBox:focus, QPlainTextEdit:focus, QDateEdit:focus {
    border: 2px solid $focus; padding: 0 10px;
}
QPlainTextEdit:focus { padding: 5px 7px; }
QLineEdit[fault="true"], QComboBox[fault="true"], QAbstractSpinBox[fault="true"] { border: 2px solid $bad_ink; }
QLineEdit:disabled, QComboBox:disabled, QAbstractSpinBox:disabled { color: $ink_soft; background: $surface_soft; }
QComboBox::drop-down, QDateEdit::drop-down { border: none; width: 26px; }
QComboBox::down-arrow, QDateEdit::down-arrow { image: url("$chevron"); width: 12px; height: 12px; }
QComboBox QAbstractItemView {
    background: $surface; color: $ink; border: 1px solid $control_line; padding: 4px; outline: none;
    selection-background-color: $accent; selection-color: $on_accent;
}
QCheckBox { spacing: 8px; }
QCheckBox::indicator {
    width: 16px; height: 16px; border: 1px solid $control_line; border-radius: 4px; background: $surface;
}
QCheckBox::indicator:checked { border-color: $accent; background: $accent; image: url("$tick"); }
QCheckBox::indicator:focus { border: 2px solid $focus; width: 14px; height: 14px; }
QMenu { background: $surface; color: $ink; border: 1px solid $control_line; border-radius: 8px; padding: 6px; }
QMenu::item { padding: 6px 22px 6px 12px; border-radius: 6px; }
QMenu::item:selected { background: $accent; color: $on_accent; }
QMenu::separator { height: 1px; background: $line; margin: 5px 8px; }
QToolTip { background: $outline; color: $page; border: none; padding: 6px 9px; }
QScrollArea, QScrollArea > QWidget > QWidget#page_body { background: transparent; border: none; }
QScrollBar:vertical { background: transparent; width: 12px; margin: 2px; }
QScrollBar:horizontal { background: transparent; height: 12px; margin: 2px; }
QScrollBar::handle { background: $control_line; border-radius: 4px; }
QScrollBar::handle:vertical { min-height: 36px; }
QScrollBar::handle:horizontal { min-width: 36px; }
QScrollBar::handle:hover { background: $ink_soft; }
QScrollBar::add-line, QScrollBar::sub-line, QScrollBar::add-page, QScrollBar::sub-page {
    background: none; border: none; width: 0; height: 0;
}
QTableView, QTreeView, QListView {
    background: $surface; color: $ink; border: 1px solid $line; border-radius: 8px; gridline-color: $line;
    alternate-background-color: $surface_soft; selection-background-color: $accent; selection-color: $on_accent;
}
QTableView:focus, QTreeView:focus, QListView:focus { border: 2px solid $focus; }
QHeaderView::section {
    background: $surface_soft; color: $ink_soft; border: none; border-bottom: 1px solid $line; padding: 6px 8px;
}
QDialog { background: $page; }
""")


def stylesheet(tokens: Tokens, chevron_file: str, tick_file: str) -> str:
    """The whole sheet; the files are the arrow of combo boxes and the tick of boxes, paths with forward slashes."""
    colours = {name: getattr(tokens, name) for name in Tokens.__slots__ if name != "dark"}
    return _SHEET.substitute(colours, chevron=chevron_file, tick=tick_file)

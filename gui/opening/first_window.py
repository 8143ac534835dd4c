"""One window per data folder: the first one listens on a local socket, a second start asks it to come to the front."""

from __future__ import annotations

import sys

from PySide6.QtCore import QObject, Signal
from PySide6.QtNetwork import QLocalServer, QLocalSocket

from core.store.faults import InUse
from gui.shell import MainWindow

WAIT_MS = 1000
CALLED = b"here\n"


class FirstWindow(QObject):
    """Listens on the folder's socket; `called` whenever a second start asks for this window."""

    called = Signal()

    def __init__(self, socket_name: str, parent: QObject) -> None:
        super().__init__(parent)
        self._server = QLocalServer(self)
        self._server.setSocketOptions(QLocalServer.SocketOption.UserAccessOption)
        self._server.newConnection.connect(self._answer)
        QLocalServer.removeServer(socket_name)  # left by a process that was killed: whoever has the lock may
        self._server.listen(socket_name)

    def close(self) -> None:
        """Listen no longer."""
        self._server.close()

    def _answer(self) -> None:
        caller = self._server.nextPendingConnection()
        if caller is not None:
            caller.disconnected.connect(caller.deleteLater)
            caller.write(CALLED)
            caller.disconnectFromServer()
            self.called.emit()


def call_first_window(socket_name: str, wait_ms: int = WAIT_MS) -> bool:
    """Ask the window that has the folder to come to the front; False when nobody answers in time."""
    socket = QLocalSocket()
    socket.connectToServer(socket_name)
    if not socket.waitForConnected(wait_ms):
        return False
    socket.waitForReadyRead(wait_ms)  # false also where the answer came together with the end of the connection
    return bytes(socket.readAll().data()) == CALLED


def hand_over(window: MainWindow, error: InUse) -> None:
    """Another window has the folder: bring that one to the front and close this one, or say why it can't be."""
    sys.stderr.write(f"{error}\n")
    if call_first_window(error.socket_name):
        window.close()
    else:
        window.show_trouble(str(error))

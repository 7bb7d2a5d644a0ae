"""Drops a file on a window as a file manager does.

Source: "Drag-and-Drop Protocol for the X Window System", version 5 (freedesktop.org).
"""

import ctypes

VERSION = 5
CLIENT_MESSAGE, SELECTION_REQUEST, SELECTION_NOTIFY = 33, 30, 31  # X.h
REPLACE = 0  # X.h, PropModeReplace


class _Head(ctypes.Structure):
    _fields_ = [("type", ctypes.c_int), ("serial", ctypes.c_ulong), ("send_event", ctypes.c_int),
                ("display", ctypes.c_void_p), ("window", ctypes.c_ulong)]


class _Message(_Head):
    _fields_ = [("message_type", ctypes.c_ulong), ("format", ctypes.c_int),
                ("data", ctypes.c_long * 5)]


class _Request(_Head):  # of what is dropped, by whoever it is dropped on
    _fields_ = [("requestor", ctypes.c_ulong), ("selection", ctypes.c_ulong),
                ("target", ctypes.c_ulong), ("property", ctypes.c_ulong), ("time", ctypes.c_ulong)]


class _Notice(ctypes.Structure):
    _fields_ = [("type", ctypes.c_int), ("serial", ctypes.c_ulong), ("send_event", ctypes.c_int),
                ("display", ctypes.c_void_p), ("requestor", ctypes.c_ulong),
                ("selection", ctypes.c_ulong), ("target", ctypes.c_ulong),
                ("property", ctypes.c_ulong), ("time", ctypes.c_ulong)]


class _Event(ctypes.Union):
    _fields_ = [("type", ctypes.c_int), ("message", _Message), ("request", _Request),
                ("notice", _Notice), ("room", ctypes.c_long * 24)]


class _Source:
    """The window that a file is dragged from."""

    def __init__(self, display_name):
        self.x11 = ctypes.CDLL("libX11.so.6")
        self.x11.XOpenDisplay.restype = ctypes.c_void_p
        for name in ("XInternAtom", "XDefaultRootWindow", "XCreateSimpleWindow"):
            getattr(self.x11, name).restype = ctypes.c_ulong
        self.display = ctypes.c_void_p(self.x11.XOpenDisplay(display_name.encode()))
        self.root = self.x11.XDefaultRootWindow(self.display)
        self.window = self.x11.XCreateSimpleWindow(self.display, ctypes.c_ulong(self.root),
                                                   0, 0, 1, 1, 0, 0, 0)

    def atom(self, name):
        return self.x11.XInternAtom(self.display, name.encode(), 0)

    def send(self, window, event):
        self.x11.XSendEvent(self.display, ctypes.c_ulong(window), 0, ctypes.c_long(0),
                            ctypes.byref(event))
        self.x11.XFlush(self.display)

    def say(self, window, what, *data):
        event = _Event(message=_Message(type=CLIENT_MESSAGE, window=window, format=32,
                                        message_type=self.atom(what)))
        event.message.data[:] = [self.window, *data]
        self.send(window, event)

    def hear(self, kind, what=None):
        """Waits for an event of a kind; of client messages for the one that is called `what`."""
        while True:
            event = _Event()
            self.x11.XNextEvent(self.display, ctypes.byref(event))
            if event.type == kind and (what is None or
                                       event.message.message_type == self.atom(what)):
                return event

    def hand_over(self, data):
        request = self.hear(SELECTION_REQUEST).request
        self.x11.XChangeProperty(self.display, ctypes.c_ulong(request.requestor),
                                 ctypes.c_ulong(request.property), ctypes.c_ulong(request.target),
                                 8, REPLACE, data, len(data))
        self.send(request.requestor, _Event(notice=_Notice(
            type=SELECTION_NOTIFY, requestor=request.requestor, selection=request.selection,
            target=request.target, property=request.property, time=request.time)))


def drop_file(display_name, window, path, x=400, y=300):
    """Drops a file at a place of a window and waits until the window has taken it."""
    source = _Source(display_name)
    selection = source.atom("XdndSelection")
    source.x11.XSetSelectionOwner(source.display, ctypes.c_ulong(selection),
                                  ctypes.c_ulong(source.window), ctypes.c_ulong(0))
    source.say(window, "XdndEnter", VERSION << 24, source.atom("text/uri-list"), 0, 0)
    source.say(window, "XdndPosition", 0, x << 16 | y, 0, source.atom("XdndActionCopy"))
    source.hear(CLIENT_MESSAGE, "XdndStatus")
    source.say(window, "XdndDrop", 0, 0, 0, 0)
    source.hand_over((path.resolve().as_uri() + "\r\n").encode())
    source.hear(CLIENT_MESSAGE, "XdndFinished")
    source.x11.XCloseDisplay(source.display)

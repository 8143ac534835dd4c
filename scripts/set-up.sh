# Sourced by ./run, ./run-tests and .ci/run, with `root` set to the checkout: makes .venv ready, and says what is missing.
#
#   set_up runtime|dev    Python, .venv and the locked libraries; quick when nothing changed
#   need_qt               the system libraries Qt's window needs
#
# A machine that lacks something gets one sentence on stderr and exit status 1. As root on Debian it is installed instead.

venv=$root/.venv

# A module of the person's own named `core` must not come before ours.
unset PYTHONPATH PYTHONHOME
# Without compiled files every start takes seconds.
unset PYTHONDONTWRITEBYTECODE
export PIP_DISABLE_PIP_VERSION_CHECK=1

say() {
    printf '%s\n' "$*" >&2
}

give_up() {
    say "$*"
    exit 1
}

# need_packages SENTENCE PACKAGE...: install the Debian packages as root, or say the line to type.
need_packages() {
    sentence=$1
    shift
    if ! command -v apt-get > /dev/null 2>&1; then
        give_up "$sentence; install it with your system's package tool (on Debian: $*)."
    fi
    [ "$(id -u)" -eq 0 ] || give_up "$sentence; type: sudo apt-get install $*"
    say "$sentence; installing $*"
    if [ -z "${apt_updated:-}" ]; then
        apt-get -qq update || give_up "Debian's package list could not be read; check the network and try again."
        apt_updated=yes
    fi
    DEBIAN_FRONTEND=noninteractive apt-get -qq -y --no-install-recommends install "$@" > /dev/null ||
        give_up "Installing failed; type: apt-get install $*"
}

is_new_enough() {
    command -v "$1" > /dev/null 2>&1 && "$1" -c 'import sys; sys.exit(sys.version_info < (3, 11))' > /dev/null 2>&1
}

find_python() {
    for python in python3 python3.14 python3.13 python3.12 python3.11; do
        if is_new_enough "$python"; then
            return 0
        fi
    done
    return 1
}

need_python() {
    if ! find_python; then
        need_packages "Fillmark needs Python 3.11 or newer" python3 python3-venv
        find_python || give_up "Fillmark needs Python 3.11 or newer, and this system offers only $(python3 --version 2>&1)."
    fi
    # Debian ships Python without the part that makes a venv.
    if ! "$python" -c 'import ensurepip, venv' > /dev/null 2>&1; then
        version=$("$python" -c 'import sys; print(f"python{sys.version_info.major}.{sys.version_info.minor}")')
        need_packages "Python's venv module is missing" "$version-venv"
    fi
}

# Scripts inside a venv hold its path, so a checkout that was moved or copied needs a new one.
venv_is_usable() {
    [ -x "$venv/bin/pip" ] && "$venv/bin/python" -c '' > /dev/null 2>&1 || return 1
    [ ! -e "$venv/fillmark-place" ] || [ "$(cat "$venv/fillmark-place")" = "$root" ]
}

# set_up runtime|dev: afterwards $venv/bin/fillmark exists and the lock's exact versions are installed.
set_up() {
    case $1 in
        dev) lock=$root/requirements-dev.lock ;;
        *) lock=$root/requirements.lock ;;
    esac
    wanted=$(cat "$lock" "$root/pyproject.toml" | cksum)
    stamp=$venv/fillmark-$1
    if venv_is_usable && [ "$(cat "$stamp" 2> /dev/null)" = "$wanted" ]; then
        return 0
    fi
    need_python
    say "Setting up Fillmark in .venv; the first time this takes a minute or two."
    venv_is_usable || "$python" -m venv --clear "$venv" || give_up "The folder $venv could not be made."
    printf '%s\n' "$root" > "$venv/fillmark-place"
    rm -f "$venv/fillmark-runtime" "$venv/fillmark-dev"
    "$venv/bin/python" -m pip install -qq --no-input --require-hashes --only-binary :all: -r "$lock" ||
        give_up "The libraries could not be installed; check the network and the free disk space, then try again."
    "$venv/bin/python" -m pip install -qq --no-input --no-deps --no-build-isolation --no-index --editable "$root" ||
        give_up "Fillmark could not be added to $venv; see the lines above."
    # So that the first start need not read and check the whole catalog; what is wrong with it, the start itself says.
    (cd -- "$root" && "$venv/bin/python" -c 'from catalog.load import load_catalog; load_catalog()' 2> /dev/null) || :
    # The dev lock holds the runtime lock's exact versions, so it serves both.
    [ "$1" != dev ] || cat "$root/requirements.lock" "$root/pyproject.toml" | cksum > "$venv/fillmark-runtime"
    printf '%s\n' "$wanted" > "$stamp"
}

# need_qt: every system library Qt's widgets and its X11 or offscreen window link to can be loaded.
need_qt() {
    missing=$("$venv/bin/python" "$root/scripts/qt_libraries.py") && return 0
    # shellcheck disable=SC2086 # one word per package
    need_packages "Qt needs system libraries that are missing" $missing
    missing=$("$venv/bin/python" "$root/scripts/qt_libraries.py") || give_up "Qt still misses: $missing"
}

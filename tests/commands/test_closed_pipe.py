import subprocess
import sys


def test_a_reader_that_has_read_enough_is_no_fault() -> None:
    """``finishing schema | head``: the pipe is closed early; nothing is complained about, and the status is 0."""
    command = [sys.executable, "-m", "finishing_tui", "schema"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.close()
        complaints = process.stderr.read()
        assert process.wait() == 0
    assert complaints == b""

#!/usr/bin/python3
"""mutate.py - puts small faults into a copy of the source, one at a time, and runs the tests.

A mutant is one change: an operator, a constant or a statement. It is killed when a test fails or
does not end; what is left are survivors. Not counted: what does not compile, and what compiles to
the same object code. Started by `make mutate`, which knows the flags; see make/mutate.mk.

The copy holds the program as one shared library. First the library is compiled with a call in each
block (reach.c), and every test is run once: that tells which tests reach which line, and how long
they take. A mutant meets only tests that reach its function: those with the name of its file first,
then core, engine, cases, scripts, the quickest first. Slow tests are left out where others reach it.

Which mutants are taken hangs on SEED and on the text around each, by a hash: a change elsewhere
leaves the choice as it was.
"""
import argparse
import collections
import filecmp
import glob
import hashlib
import itertools
import json
import mmap
import os
import re
import resource
import shutil
import signal
import subprocess
import sys
import tempfile
import threading
import time

FOLDERS = ('core', 'calc', 'engine', 'cli')
COPIED = ('Makefile', 'README.md', 'make', 'include', 'src', 'tests', 'data', 'docs', '.ci')
LANES = 2
# Cases that make one test.
PART = 12
# In the pass that measures: what takes longer is stopped, and what it had reached by then counts.
PASS_SECONDS = 5
# A test above is left out where quicker ones reach the same function.
SLOW_SECONDS = 2
LINKED = "-Wl,--no-as-needed -Wl,-rpath,'$$ORIGIN:$$ORIGIN/../..'"
PLAIN = '-O2 -fPIC -fno-semantic-interposition -w'
TRACED = '-O1 -fno-inline -g1 -fPIC -w -fsanitize-coverage=trace-pc'

Site = collections.namedtuple('Site', 'file line kind start end new order')
Test = collections.namedtuple('Test', 'name group command program')


# --- Where a mutant may be --------------------------------------------------------------------

TOKEN = re.compile(r'''
    (?P<skip>/\*.*?\*/ | //[^\n]* | \s+)
  | (?P<text>"(?:\\.|[^"\\])*" | '(?:\\.|[^'\\])*')
  | (?P<number>\.?[0-9](?:[eEpP][+-]|[0-9a-zA-Z_.])*)
  | (?P<name>[A-Za-z_][A-Za-z_0-9]*)
  | (?P<mark>->|\+\+|--|<<=|>>=|<<|>>|<=|>=|==|!=|&&|\|\||[-+*/%&|^]=|\.\.\.|.)
''', re.X | re.S)
OPERATORS = {'<': '<=', '<=': '<', '>': '>=', '>=': '>', '==': '!=', '!=': '==', '+': '-',
             '-': '+', '*': '/', '/': '*', '&&': '||', '||': '&&'}
TYPES = re.compile(r'(?:void|char|int|long|short|unsigned|signed|double|float|bool|const|struct|'
                   r'enum|static|extern|inline|FILE|[a-z0-9_]+_t)$')
WORDS = {'return', 'if', 'for', 'while', 'switch', 'case', 'default', 'break', 'continue', 'goto',
         'do', 'else', 'typedef', 'sizeof', 'static_assert', '_Static_assert'}
# A buffer or a page that is one larger or smaller is no fault.
CAPACITY = re.compile(r'.*_(?:MAX|BYTES|ROOM|SIZE|TEXT)$')


def tokens_of(text):
    """Tokens outside comments, strings and lines of the preprocessor: (kind, text, start)."""
    hidden = re.sub(r'^[ \t]*#(?:[^\n\\]|\\.)*', hide_directive, text, flags=re.M | re.S)
    found = []
    for match in TOKEN.finditer(hidden):
        if match.lastgroup != 'skip':
            found.append((match.lastgroup, match.group(), match.start()))
    return found


def hide_directive(match):
    """Blanks, but for the value of a #define of a constant."""
    line = match.group()
    value = re.match(r'[ \t]*#[ \t]*define[ \t]+\w+[ \t]+', line)
    kept = value.end() if value else len(line)
    return re.sub(r'[^\n]', ' ', line[:kept]) + line[kept:]


def closing(tokens, i):
    """The index of what closes the bracket at i."""
    pairs = {'(': ')', '[': ']', '{': '}'}
    close, depth = pairs[tokens[i][1]], 0
    for j in range(i, len(tokens)):
        if tokens[j][1] == tokens[i][1] and tokens[j][0] == 'mark':
            depth += 1
        elif tokens[j][1] == close and tokens[j][0] == 'mark':
            depth -= 1
            if depth == 0:
                return j
    return len(tokens) - 1


def barred(tokens):
    """Indices where nothing is changed: static assertions, sizes of arrays, capacities."""
    bar = set()
    for i, (kind, word, _) in enumerate(tokens):
        if word in ('static_assert', '_Static_assert'):
            bar.update(range(i, closing(tokens, i + 1)))
        if word == '[' and i > 1 and tokens[i - 1][0] == 'name' and (
                tokens[i - 2][0] == 'name' and tokens[i - 2][1] not in WORDS):
            end = closing(tokens, i)
            while tokens[end + 1][1] == '[':
                end = closing(tokens, end + 1)
            bar.update(range(i, end))
        if kind == 'name' and CAPACITY.match(word) and i + 1 < len(tokens) and (
                tokens[i + 1][1] == '='):
            j = i
            while j < len(tokens) and tokens[j][1] not in ',};':
                bar.add(j)
                j += 1
    return bar


def is_binary(tokens, i):
    kind, word, _ = tokens[i - 1] if i > 0 else ('mark', '(', 0)
    if tokens[i][1] not in '+-*' or len(tokens[i][1]) > 1:
        return True
    if kind == 'number' or word in (')', ']'):
        return True
    return kind == 'name' and word not in WORDS and not (
        tokens[i][1] == '*' and (TYPES.match(word) or tokens[i - 2][1] in ('struct', 'enum')))


def other_numbers(word):
    """What stands in the place of a constant."""
    if re.fullmatch(r'[0-9]+[uUlL]*', word) and not re.match(r'0[0-9]', word):
        digits = re.match(r'[0-9]+', word).group()
        tail = word[len(digits):]
        n = int(digits)
        return ['1' + tail] if n == 0 else ['0' + tail, '2' + tail] if n == 1 else [
            str(n + 1) + tail]
    if re.fullmatch(r'[0-9]*\.?[0-9]*(?:[eE][-+]?[0-9]+)?', word):
        value = float(word)
        return ['1.0' if value == 0 else '%.17g' % (value * 1.01)]
    return []


def functions_of(text):
    """Bodies as the formatter writes them: { and } in the first column. (from, to, first token of
    the body, head), in offsets."""
    found = []
    for match in re.finditer(r'^\{\n.*?^\}\n', text, flags=re.M | re.S):
        head = text[:match.start()].rstrip('\n')
        head = re.split(r'\n\s*\n|;\n|\}\n|\*/\n', head)[-1]
        found.append((match.start() - len(head), match.end(), match.start() + 1, head))
    return found


def early_return(head):
    word = head.replace('static', '').replace('inline', '').strip()
    if word.startswith('void ') and not word.startswith('void *'):
        return ' return;'
    return None if re.match(r'(?:const )?struct \w+ [^*]', word) else ' return 0;'


def statement_sites(tokens, i):
    """The end of the statement that begins at token i, when it is a call or an assignment."""
    first, second = tokens[i], tokens[i + 1] if i + 1 < len(tokens) else ('', '', 0)
    if first[1] in WORDS or (first[0] == 'name' and TYPES.match(first[1])):
        return None
    if first[0] == 'name' and second[0] == 'name':
        return None
    if not (first[0] == 'name' or first[1] in ('*', '(', '++', '--')):
        return None
    depth, acts = 0, False
    for j in range(i, len(tokens)):
        word = tokens[j][1]
        if word in '([{' and tokens[j][0] == 'mark':
            acts = acts or (word == '(' and j > i)
            depth += 1
        elif word in ')]}' and tokens[j][0] == 'mark':
            depth -= 1
            if depth < 0:
                return None
        elif word == ':' and depth == 0 and j == i + 1:
            return None
        elif word == ';' and depth == 0:
            return tokens[j][2] + 1 if acts else None
        elif re.fullmatch(r'(?:[-+*/%&|^]|<<|>>)?=|\+\+|--', word):
            acts = True
    return None


def sites_of(path, text):
    tokens, found = tokens_of(text), []
    bar = barred(tokens)
    bodies = functions_of(text)

    def add(kind, start, end, new):
        found.append((kind, start, end, new))

    def inside(at):
        return any(body[2] < at < body[1] for body in bodies)

    for i, (kind, word, at) in enumerate(tokens):
        before = tokens[i - 1][1] if i > 0 else ''
        if i in bar:
            continue
        if kind == 'mark' and word in OPERATORS and is_binary(tokens, i):
            add('operator', at, at + len(word), OPERATORS[word])
        if kind == 'number':
            for new in other_numbers(word):
                add('constant', at, at + len(word), new)
        if word == 'if' and kind == 'name':
            end = tokens[closing(tokens, i + 1)][2]
            inner = tokens[i + 1][2] + 1
            add('statement', inner, end, '!(' + text[inner:end] + ')')
        if inside(at) and (before in ('{', '}', ';', 'else') or (
                before == ')' and begins_after(tokens, i - 1))):
            end = statement_sites(tokens, i)
            if end:
                add('statement', at, end, re.sub(r'[^\n]', '', text[at:end]) + ';')
    for _, _, at, head in bodies:
        new = early_return(head)
        if new:
            add('statement', at, at, new)
    return [Site(path, text.count('\n', 0, start) + 1, kind, start, end, new, '')
            for kind, start, end, new in found]


def begins_after(tokens, i):
    """Whether the bracket closing at i is that of an if, for or while."""
    depth = 0
    for j in range(i, -1, -1):
        if tokens[j][1] == ')':
            depth += 1
        elif tokens[j][1] == '(':
            depth -= 1
            if depth == 0:
                return tokens[j - 1][1] in ('if', 'for', 'while')
    return False


def squeezed(text):
    return re.sub(r'\s+', ' ', text).strip()


def shown(site, text):
    """The lines of a site before and after, on one line each."""
    start = text.rfind('\n', 0, site.start) + 1
    end = text.find('\n', site.end)
    before = squeezed(text[start:end])
    after = squeezed(text[start:site.start] + site.new + text[site.end:end])
    if site.start == site.end:  # a return where a body begins: its function
        head = [body[3] for body in functions_of(text) if body[2] == site.start][0]
        return squeezed(head) + ' {', squeezed(head) + ' {' + site.new
    return before, after


def all_sites(root, seed):
    """Of each folder three lists, one of each kind, in the order of the hash."""
    lists, texts = {}, {}
    for folder in FOLDERS:
        kinds = {'operator': [], 'constant': [], 'statement': []}
        for path in sorted(glob.glob(root + '/src/%s/*.[ch]' % folder)):
            name = os.path.relpath(path, root)
            texts[name] = open(path, encoding='ascii').read()
            seen = collections.Counter()
            for site in sites_of(name, texts[name]):
                words = (seed, name, *shown(site, texts[name]))
                seen[words] += 1
                key = '\0'.join(map(str, (*words, seen[words])))
                order = hashlib.sha256(key.encode()).hexdigest()
                kinds[site.kind].append(site._replace(order=order))
        for kind in kinds.values():
            kind.sort(key=lambda site: site.order)
        lists[folder] = kinds
    return lists, texts


def interleaved(kinds):
    lists = [list(kind) for kind in kinds.values()]
    while any(lists):
        for kind in lists:
            if kind:
                yield kind.pop(0)


# --- The copy ---------------------------------------------------------------------------------

def sync(source, target):
    """Copies what differs, with its time, and takes away what is gone."""
    if os.path.isdir(source):
        os.makedirs(target, exist_ok=True)
        for name in set(os.listdir(target)) - set(os.listdir(source)):
            gone = os.path.join(target, name)
            shutil.rmtree(gone) if os.path.isdir(gone) else os.remove(gone)
        for name in os.listdir(source):
            sync(os.path.join(source, name), os.path.join(target, name))
    elif not (os.path.exists(target) and filecmp.cmp(source, target, shallow=True)):
        if os.path.exists(target):
            os.remove(target)
        shutil.copy2(source, target)


def make(tree, build, flags, *more):
    """The words of a make in a copy: everything links to one shared library."""
    library = build + '/libparts.so'
    return [os.environ.get('MAKE', 'make'), '-C', tree, '--no-print-directory', 'BUILD=' + build,
            'CFLAGS=' + flags, 'LDFLAGS=' + LINKED, 'CORE_OBJ=' + library, 'PARTS_OBJ=' + library,
            'PROGRAM_OBJ=' + library, 'WERROR=', 'STATIC=', *more]


def commands_of(tree):
    """What make would run to compile each object and to link each program, by their names."""
    said = subprocess.run(make(tree, 'build', PLAIN, '-n', '-B', 'mutate-built'),
                          check=True, stdout=subprocess.PIPE, text=True).stdout
    commands = {}
    for line in said.replace('\\\n', ' ').split('\n'):
        words = re.search(r' -o (\S+)', line)
        if words and not line.startswith('printf'):
            commands[words.group(1)] = line
    return commands


def dependents_of(tree):
    """The objects that are made from each file of src."""
    found = collections.defaultdict(list)
    for name in glob.glob(tree + '/build/**/*.d', recursive=True):
        rule = open(name, encoding='utf-8').read().replace('\\\n', ' ').split('\n')[0]
        target, _, sources = rule.partition(':')
        for source in sources.split():
            found[os.path.normpath(source)].append('build/' + target.split('/', 1)[1])
    return found


def parts_of(path):
    """A file of many cases in parts of a few; cases before that make files come along."""
    text = open(path, encoding='utf-8').read()
    cases = re.split(r'(?<=\n)\n(?=[$#] )', text)
    if len(cases) <= PART:
        return [path]
    names, makers = [], []
    os.makedirs('build/cases', exist_ok=True)
    for i in range(0, len(cases), PART):
        part = cases[i:i + PART]
        name = 'build/cases/%s-%d.txt' % (os.path.basename(path)[:-4], i // PART)
        with open(name, 'w', encoding='utf-8') as file:
            file.write('\n'.join(makers + part))
        names.append(name)
        makers += [case for case in part if re.search(r'^\$ [^\n]*(>|--log)|^\$ (?!holdwater|printf'
                                                      r'|echo)', case, flags=re.M)]
    return names


def all_tests(tree):
    tests = []

    def add(name, group, command, program):
        tests.append(Test(name, group, command, program))

    def built(path):
        return 'build/' + path[:-2]

    os.chdir(tree)
    for path in sorted(glob.glob('tests/core/test_*.c')) + ['tests/reference/run_reference.c']:
        add(path[:-2], 0, [built(path)], built(path))
    for path in sorted(glob.glob('tests/engine/test_*.c')):
        add(path[:-2], 1, [built(path)], built(path))
    documents = [path for path in glob.glob('docs/**/*.md', recursive=True)
                 if path != 'docs/logbook.md']
    cases = [part for path in sorted(glob.glob('tests/cli/*.txt')) for part in parts_of(path)]
    for path in cases + ['README.md'] + sorted(documents):
        add(path, 2, ['build/tests/cli/run_cases', path], None)
    for path in sorted(glob.glob('tests/cli/test_*.sh')):
        add(path, 3, ['sh', path, 'build'], None)
    return tests


# --- Running a test ---------------------------------------------------------------------------

def set_limits():
    resource.setrlimit(resource.RLIMIT_FSIZE, (1 << 27, 1 << 27))
    resource.setrlimit(resource.RLIMIT_AS, (1 << 32, 1 << 32))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def of_session(pid):
    """The processes of a test, and what each has taken of the processor so far, in ticks; the first
    of them with its children that have ended."""
    for name in glob.glob('/proc/[0-9]*/stat'):
        try:
            with open(name, encoding='ascii', errors='replace') as file:
                fields = file.read().rpartition(')')[2].split()
        except OSError:
            continue
        if fields[3] == str(pid):
            one = int(name.split('/')[2])
            yield one, sum(map(int, fields[11:15] if one == pid else fields[11:13]))


def processor_seconds(pid):
    """What the processes of the test have taken so far, all together."""
    return sum(ticks for _, ticks in of_session(pid)) / os.sysconf('SC_CLK_TCK')


def end_session(pid):
    """Ends them all: those that a test put into groups of their own, too."""
    for one in [one for one, _ in of_session(pid)]:
        try:
            os.kill(one, signal.SIGKILL)
        except OSError:
            continue


def run_test(tree, test, cpu_seconds, said=subprocess.DEVNULL):
    """How it ended, 'passed', 'failed' or 'endless', and the seconds of the processor it took. It
    may take so many, and 20 times as long by the clock, which others' work stretches."""
    environment = dict(os.environ, HOLDWATER=tree + '/build/holdwater', HOLDWATER_RUN='',
                       HOLDWATER_DATA=tree + '/data', LOG_RECORDS='5')
    for name in ('MAKEFLAGS', 'MAKELEVEL', 'MFLAGS', 'MAKE'):
        environment.pop(name, None)
    process = subprocess.Popen(test.command, cwd=tree, env=environment, stdout=said,
                               stderr=subprocess.STDOUT, stdin=subprocess.DEVNULL,
                               start_new_session=True, preexec_fn=set_limits)
    end = None
    deadline, pause = time.monotonic() + 60 + 20 * cpu_seconds, 0.002
    while True:
        pid, status, used = os.wait4(process.pid, os.WNOHANG)
        if pid:
            break
        if time.monotonic() > deadline or processor_seconds(process.pid) > cpu_seconds:
            end = 'endless'
            end_session(process.pid)
            _, status, used = os.wait4(process.pid, 0)
            break
        time.sleep(pause)
        pause = min(pause * 1.5, 0.05)
    process.returncode = status
    return (end or ('passed' if status == 0 else 'failed')), used.ru_utime + used.ru_stime


# --- Which tests reach what -------------------------------------------------------------------

def hash_of(paths):
    total = hashlib.sha256()
    for path in paths:
        with open(path, 'rb') as file:
            total.update(path.encode() + b'\0' + file.read() + b'\0')
    return total.hexdigest()


def file_of(test):
    """What a test stands in."""
    return test.name + '.c' if test.program else test.name


def hashes(tree, tests):
    """By test: what its reach hangs on, its own file and the program."""
    os.chdir(tree)
    common = hash_of(sorted(path for path in glob.glob('[ds]*/**/*', recursive=True)
                            if path.startswith(('src/', 'data/')) and os.path.isfile(path)))
    return {test.name: common + hash_of([file_of(test)]) for test in tests}


def trace(trees, tests):
    """Runs each test once against the library that marks what it reaches. By test: seconds, the
    offsets reached, how it ended."""
    size = os.path.getsize(trees[0] + '/build/libparts.so')
    queue, results = list(tests), {}

    def lane(tree):
        with open(tree + '/build/reach', 'wb') as file:
            file.truncate(size)
        with open(tree + '/build/reach', 'r+b') as file, mmap.mmap(file.fileno(), size) as marks:
            while queue:
                test = queue.pop(0)
                marks[:] = bytes(size)
                with open(tree + '/build/said', 'wb') as said:
                    end, seconds = run_test(tree, test, PASS_SECONDS, said)
                if end == 'failed':
                    sys.stdout.write(open(tree + '/build/said', errors='replace').read()[-2000:])
                data = bytes(marks)
                reached = [match.start() for match in re.finditer(b'\x01', data)]
                results[test.name] = (seconds, reached, end)
        os.remove(tree + '/build/reach')

    in_lanes(lane, trees)
    return results


def lines_of(library, offsets):
    """The line of each offset: the call before it stands where the block begins."""
    text = '\n'.join('0x%x' % (offset - 1) for offset in offsets)
    said = subprocess.run(['addr2line', '-e', library], input=text, check=True,
                          stdout=subprocess.PIPE, text=True).stdout.split('\n')
    found = {}
    for offset, line in zip(offsets, said):
        match = re.search(r'(src/\w+/\w+\.[ch]):([0-9]+)', line)
        if match:
            found[offset] = (match.group(1), int(match.group(2)))
    return found


def reach_of(build, trees, tests):
    """By test: seconds, and the lines reached as {file: [line]}. Kept for tests that hang on
    nothing that has changed."""
    kept, now, old = build + '/reach.json', hashes(trees[0], tests), {}
    if os.path.exists(kept):
        with open(kept, encoding='ascii') as file:
            old = json.load(file)
    found = {name: old[name] for name in now if name in old and old[name]['of'] == now[name]}
    missing = [test for test in tests if test.name not in found]
    if missing:
        print('which of %d tests reach what' % len(missing), flush=True)
        found.update(measure(trees, missing, now))
        with open(kept, 'w', encoding='ascii') as file:
            json.dump(found, file)
    for name in sorted(found):
        if found[name]['failed']:
            print('left out, as it fails without any fault: ' + name)
    return {name: one for name, one in found.items() if not one['failed']}


def measure(trees, tests, now):
    os.makedirs(trees[0] + '/build-traced', exist_ok=True)
    subprocess.run(['cc', '-O2', '-fPIC', '-c', '-o', 'build-traced/reach.o',
                    'tests/mutate/reach.c'], cwd=trees[0], check=True)
    subprocess.run(make(trees[0], 'build-traced', TRACED, '-s', '-j%d' % LANES,
                        'REACH=build-traced/reach.o', 'build-traced/libparts.so'), check=True)
    traced = trees[0] + '/build-traced/libparts.so'
    for tree in trees:
        os.rename(tree + '/build/libparts.so', tree + '/build/libparts.so.plain')
        shutil.copy2(traced, tree + '/build/libparts.so')
    try:
        results = trace(trees, tests)
    finally:
        for tree in trees:
            os.rename(tree + '/build/libparts.so.plain', tree + '/build/libparts.so')
    line = lines_of(traced, sorted({at for _, reached, _ in results.values() for at in reached}))
    found = {}
    for name, (seconds, reached, end) in results.items():
        files = collections.defaultdict(set)
        for at in reached:
            if at in line:
                files[line[at][0]].add(line[at][1])
        found[name] = {'of': now[name], 'seconds': seconds, 'stopped': end == 'endless',
                       'failed': end == 'failed',
                       'files': {file: sorted(lines) for file, lines in files.items()}}
    return found


def function_lines(site, text):
    """First and last line of the function of a site, or None."""
    for start, end, _, _ in functions_of(text):
        if start <= site.start < end:
            return text.count('\n', 0, start) + 1, text.count('\n', 0, end)
    return None


def named_after(test, site):
    """Whether the test bears the name of the file, or its first words."""
    stem = os.path.basename(site.file)[:-2]
    name = re.sub(r'^test_|(?:_core|-[0-9]+)?\.\w+$|_core$', '', os.path.basename(test.name))
    return stem == name or stem.startswith(name + '_')


def chosen_tests(site, text, tests, reach, dependents, links, room):
    """The tests to run, in their order, of `room` seconds together; and the seconds of each."""
    files = {site.file} | {os.path.normpath(name.replace('build/', '', 1)[:-2] + '.c')
                           for name in dependents[site.file]}
    body = function_lines(site, text)
    known = {test.name: reach[test.name] for test in tests if test.name in reach}

    def lines(name):
        return known[name]['files'].get(site.file, [])

    anchor = 0
    if body:
        all_lines = {line for name in known for line in lines(name)}
        anchor = max((line for line in all_lines if body[0] <= line <= site.line), default=0)
        meets = [test for test in tests if test.name in known and any(
            body[0] <= line <= body[1] for line in lines(test.name))]
    else:
        meets = [test for test in tests if test.name in known and any(
            file in known[test.name]['files'] for file in files) or named_after(test, site) or (
                # a table is read from elsewhere
                test.group == 1 and known[test.name]['seconds'] <= SLOW_SECONDS / 4)]
    # tests that take a header of the source in are not seen to reach it
    taken_in = {name for name in dependents[site.file] if name.startswith('build/tests/')}
    inner = [test for test in tests if test.name in known and links.get(test.program, set()) &
             taken_in]
    meets = inner + [test for test in meets if test not in inner]
    quick = [test for test in meets if known[test.name]['seconds'] <= SLOW_SECONDS or
             named_after(test, site)]
    met = [test for test in quick if not body or anchor in lines(test.name)]
    taken = quick if met else meets
    taken = [test for test in taken if not known[test.name]['stopped']] or taken
    taken = sorted([test for test in taken if test not in inner] + inner, key=lambda test: (
        not named_after(test, site), test not in inner, bool(body) and anchor not in lines(test.name), test.group,
        known[test.name]['seconds']))
    left, some = room, []
    for test in taken:
        seconds = known[test.name]['seconds']
        if not some or seconds <= left:
            some.append((test, seconds))
            left -= seconds
    return some


# --- One mutant -------------------------------------------------------------------------------

class Lane:
    """A copy of the tree in which one mutant at a time is made and tested."""

    def __init__(self, tree, commands, dependents):
        self.tree, self.commands, self.dependents = tree, commands, dependents
        self.links = {name: set(re.findall(r'build/\S+\.o', command))
                      for name, command in commands.items() if not name.endswith('.o')}

    def path(self, name):
        return os.path.join(self.tree, name)

    def stripped(self, name):
        with tempfile.NamedTemporaryFile(dir=self.tree) as file:
            subprocess.run(['strip', '-o', file.name, self.path(name)], check=True)
            return open(file.name, 'rb').read()

    def run_command(self, name):
        return subprocess.run(self.commands[name], shell=True, cwd=self.tree,
                              stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL).returncode

    def put_aside(self, name, aside):
        if name not in aside:
            os.rename(self.path(name), self.path(name) + '.aside')
            aside.append(name)

    def try_site(self, site, text, tests):
        """'same', 'broken', 'survived', or the name of the test that killed it."""
        aside = []
        try:
            self.put_aside(site.file, aside)
            with open(self.path(site.file), 'w', encoding='ascii') as file:
                file.write(text[:site.start] + site.new + text[site.end:])
            return self.build(site, aside) or self.run_tests(tests)
        finally:
            for name in aside:
                os.replace(self.path(name) + '.aside', self.path(name))

    def build(self, site, aside):
        """None, or why it does not count."""
        changed = []
        for name in self.dependents[site.file]:
            self.put_aside(name, aside)
            if self.run_command(name) != 0:
                return 'broken'
            old, new = self.path(name) + '.aside', self.path(name)
            if not filecmp.cmp(old, new, shallow=False) and (
                    self.stripped(name + '.aside') != self.stripped(name)):
                changed.append(name)
        if not changed:
            return 'same'
        for name, objects in self.links.items():
            if objects & set(changed):
                self.put_aside(name, aside)
                if self.run_command(name) != 0:
                    return 'broken'
        return None

    def run_tests(self, tests):
        for test, seconds in tests:
            end, _ = run_test(self.tree, test, 2 + 4 * seconds)
            if end != 'passed':
                return test.name + (' (endless)' if end == 'endless' else '')
        return 'survived'


def in_lanes(work, items):
    errors = []

    def guarded(item):
        try:
            work(item)
        except BaseException as error:  # shown by the main thread
            errors.append(error)

    threads = [threading.Thread(target=guarded, args=(item,)) for item in items]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    if errors:
        raise errors[0]


# --- The run ----------------------------------------------------------------------------------

def read_argued(path):
    """{(file, before, after): reason}"""
    argued = {}
    for number, line in enumerate(open(path, encoding='ascii'), 1):
        if line.startswith('#') or not line.strip():
            continue
        cells = line.rstrip('\n').split('\t')
        if len(cells) != 4:
            sys.exit('%s:%d: not four columns' % (path, number))
        argued[tuple(cells[:3])] = cells[3]
    return argued


def check_argued(argued, lists, texts):
    there = {(site.file, *shown(site, texts[site.file])) for kinds in lists.values()
             for kind in kinds.values() for site in kind}
    for key in argued:
        if key not in there:
            sys.exit('argued.tsv: no such mutant: %s: %s -> %s' % key)


def quotas(mutants, only):
    """How many of each folder each lane takes."""
    folders = [folder for folder in FOLDERS if ('src/%s/' % folder).startswith(only) or
               only.startswith('src/%s/' % folder)]
    found = {}
    for i, folder in enumerate(folders):
        n = mutants // len(folders) + (i < mutants % len(folders))
        found[folder] = [n * (j + 1) // LANES - n * j // LANES for j in range(LANES)]
    return found


def report(outcomes, argued, least):
    total = collections.Counter()
    for folder in FOLDERS:
        mine = [outcome for outcome in outcomes if outcome['folder'] == folder]
        if mine:
            count = collections.Counter(outcome['end'] for outcome in mine)
            total += count
            print(score_line(folder, count))
    print(score_line('all', total))
    survivors = [outcome for outcome in outcomes if outcome['end'] == 'survived']
    if survivors:
        print('survivors:')
    for outcome in sorted(survivors, key=lambda one: (one['file'], one['line'])):
        print('%(file)s:%(line)d: %(before)s -> %(after)s' % outcome)
    for outcome in outcomes:
        key = (outcome['file'], outcome['before'], outcome['after'])
        if key in argued and outcome['end'] == 'killed':
            print('killed, though argued: %(file)s: %(before)s -> %(after)s' % outcome)
    return share(total) >= least


def share(count):
    judged = count['killed'] + count['survived']
    return 100 * count['killed'] / judged if judged else 100


def score_line(name, count):
    return '%-6s %3d killed, %3d survived, %2d equivalent (argued): %5.1f %% killed' % (
        name, count['killed'], count['survived'], count['argued'], share(count))


def run(arguments):
    root, build = os.getcwd(), os.path.abspath(arguments.build) + '/mutate'
    trees = ['%s/lane%d' % (build, i) for i in range(LANES)]
    started = time.monotonic()
    for path in glob.glob(build + '/lane*/**/*.aside', recursive=True):  # of a run that was ended
        os.replace(path, path[:-len('.aside')])
    for name in COPIED:
        os.makedirs(trees[0], exist_ok=True)
        if os.path.exists(name):
            sync(name, trees[0] + '/' + name)
    # what the main build has compiled of the tests serves here too
    for path in glob.glob(arguments.build + '/tests/*/*.[od]'):
        target = trees[0] + '/build/' + os.path.relpath(path, arguments.build)
        os.makedirs(os.path.dirname(target), exist_ok=True)
        sync(path, target)
    prepare(trees)
    tests = [all_tests(tree) for tree in trees][0]
    os.chdir(root)
    reach = reach_of(build, trees, tests)
    print('%d s to prepare, %d tests, %d of them slow' % (
        time.monotonic() - started, len(reach),
        sum(one['seconds'] > SLOW_SECONDS for one in reach.values())), flush=True)
    lists, texts = all_sites(trees[0], arguments.seed)
    argued = read_argued('tests/mutate/argued.tsv')
    check_argued(argued, lists, texts)
    commands, dependents = commands_of(trees[0]), dependents_of(trees[0])
    outcomes, dropped = [], collections.Counter()
    shares = quotas(arguments.mutants, arguments.only)

    def lane(number):
        runner = Lane(trees[number], commands, dependents)
        left = {folder: shares[folder][number] for folder in shares}
        streams = {folder: itertools.islice(
            (site for site in interleaved(lists[folder]) if site.file.startswith(arguments.only)),
            number, None, LANES) for folder in shares}
        while any(left.values()) and time.monotonic() - started < 60 * arguments.minutes:
            for folder in shares:
                site = next(streams[folder], None) if left[folder] else None
                if not site:
                    left[folder] = 0
                    continue
                left[folder] -= judge(runner, folder, site)

    def judge(runner, folder, site):
        """1 when it counts."""
        text = texts[site.file]
        before, after = shown(site, text)
        mine = chosen_tests(site, text, tests, reach, dependents, runner.links, arguments.seconds)
        start = time.monotonic()
        killer = runner.try_site(site, text, mine)
        if killer in ('same', 'broken'):
            dropped[killer] += 1
            return 0
        end = 'killed' if killer != 'survived' else 'survived'
        if end == 'survived' and (site.file, before, after) in argued:
            end = 'argued'
        outcomes.append({'folder': folder, 'file': site.file, 'line': site.line,
                         'before': before, 'after': after, 'end': end})
        if arguments.verbose or end == 'survived':
            print('%5.1f s %s:%d: %s -> %s: %s' % (time.monotonic() - start, site.file, site.line,
                                                  before, after, killer), flush=True)
        return 1

    in_lanes(lane, range(LANES))
    print('%d mutants, seed %d, %d s; not counted: %d compiled to the same, %d did not compile' % (
        len(outcomes), arguments.seed, time.monotonic() - started, dropped['same'],
        dropped['broken']))
    return 0 if report(outcomes, argued, arguments.least) else 1


def prepare(trees):
    """The copies, built."""
    # the list of flags is newer than the objects that came along: they are as good
    subprocess.run(make(trees[0], 'build', PLAIN, '-s', 'build/flags'), check=True)
    for path in glob.glob(trees[0] + '/build/tests/*/*.o'):
        if os.path.getmtime(path) < os.path.getmtime(trees[0] + '/build/flags'):
            os.utime(path)
    subprocess.run(make(trees[0], 'build', PLAIN, '-s', '-j%d' % LANES, 'mutate-built'),
                   check=True)
    for tree in trees[1:]:
        os.makedirs(tree, exist_ok=True)
        for name in COPIED + ('build',):
            if os.path.exists(trees[0] + '/' + name):
                sync(trees[0] + '/' + name, tree + '/' + name)


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument('--build', default='build')
    parser.add_argument('--mutants', type=int, default=60)
    parser.add_argument('--seed', type=int, default=1)
    parser.add_argument('--least', type=float, default=0)
    parser.add_argument('--only', default='src/', help='mutants of files whose name begins so')
    parser.add_argument('--seconds', type=float, default=10, help='of tests for each mutant')
    parser.add_argument('--minutes', type=float, default=1e9, help='begin no mutant after that')
    parser.add_argument('--verbose', action='store_true')
    sys.exit(run(parser.parse_args()))


if __name__ == '__main__':
    main()

#!/bin/sh
# test_hardened.sh BUILD - program and shared library have the hardened flags that the compiler knows, and
# tell nothing of the folder they were built in.
set -eu

. tests/scratch.sh
root=$(pwd)
checks=0

fail() {
    echo "test_hardened: $1" >&2
    exit 1
}
pass() {
    checks=$((checks + 1))
}
# part FLAG WHAT: true when this build was made with the flag; else WHAT is named as skipped.
part() {
    grep -qFe "$1" "$build/flags" || {
        echo "skipped: $2, as the build is without $1"
        return 1
    }
}

# with_flags OPTION...: the compiler and the hardened flags of this build.
with_flags() {
    flags=$(sed 's/ -Iinclude .*//' "$build/flags")
    eval "$flags \"\$@\""
}

command -v readelf >/dev/null || {
    echo 'skipped: hardened flags, as there is no readelf'
    exit 0
}
program=$build/holdwater
[ ! -e "$program.bin" ] || program=$program.bin # what an emulator runs
set -- "$program"
version=$(sed -n 's/^#define HW_VERSION  *"\(.*\)"/\1/p' include/holdwater/holdwater.h)
[ ! -e "$build/libholdwater.so.$version" ] || set -- "$@" "$build/libholdwater.so.$version"

# Whatever the flags.
for file in "$@"; do
    readelf -W -l -d "$file" >"$scratch/elf"
    ! grep -qE 'RPATH|RUNPATH' "$scratch/elf" || fail "$file: a path to libraries is in it"
    ! grep -q TEXTREL "$scratch/elf" || fail "$file: code is changed when it is loaded"
    grep -q 'GNU_STACK .* RW ' "$scratch/elf" || fail "$file: the stack can be run"
    ! grep -q ' RWE ' "$scratch/elf" || fail "$file: what can be written can be run"
    pass
done

if part '-pie' 'a program that is loaded anywhere'; then
    readelf -W -h "$program" | grep -q 'Type: *DYN' || fail 'the program is loaded at one place'
    readelf -W -d "$program" | grep -q 'FLAGS_1.* PIE' || fail 'the program is no PIE'
    pass
fi
if part '-static-pie' 'a program that loads no library'; then
    ! readelf -W -d "$program" | grep -q NEEDED || fail 'the program loads a library'
    pass
fi
if part '-z,now' 'names settled when it starts'; then
    for file in "$@"; do
        readelf -W -l -d "$file" >"$scratch/elf"
        grep -q GNU_RELRO "$scratch/elf" || fail "$file: no GNU_RELRO"
        # A static program has no names to settle.
        ! grep -q NEEDED "$scratch/elf" || grep -qE 'BIND_NOW|FLAGS_1.* NOW' "$scratch/elf" ||
            fail "$file: no BIND_NOW"
        pass
    done
fi
if part '-fstack-protector-strong' 'guards of the stack'; then
    for file in "$build/src/cli/message.o" "$build/src/core/trend.o" "$program"; do
        readelf -W -s "$file" | grep -q '__stack_chk_fail' || fail "$file: no guards of the stack"
        pass
    done
fi
if part '_FORTIFY_SOURCE' 'functions that know how long an array is'; then
    echo '#include <features.h>' >"$scratch/a.c"
    with_flags -E -dM "$scratch/a.c" >"$scratch/defined"
    if grep -q '__GLIBC__' "$scratch/defined"; then
        readelf -W -s "$build"/src/cli/*.o | grep -q 'UND __[a-z]*printf_chk' ||
            fail 'no function that knows how long an array is'
        pass
    else
        echo 'skipped: functions that know how long an array is, as the C library is not glibc'
    fi
fi
case $(readelf -h "$program") in
*X86-64*)
    # What is linked from the C library may be without; our own is not.
    if part '-fcf-protection' 'marks of where a jump may end'; then
        for file in "$build"/src/core/*.o "$build"/src/calc/*.o "$build"/src/cli/*.o; do
            readelf -n "$file" 2>/dev/null | grep -q 'x86 feature: IBT, SHSTK' || fail "$file: no marks"
        done
        pass
    fi
    if part '-fstack-clash-protection' 'arrays on the stack that are touched page by page'; then
        # The compiler is shown such an array, with the flags of this build.
        echo 'void use(char *); void f(void); void f(void) { char a[65536]; use(a); }' >"$scratch/a.c"
        with_flags -O1 -S -o "$scratch/a.s" "$scratch/a.c"
        grep -qE '(or|mov)q[[:space:]]+\$0, *-?[0-9]*\(%rsp\)' "$scratch/a.s" ||
            fail 'a large array is not touched page by page'
        pass
    fi
    ;;
esac

# The folder: neither in debugging information nor elsewhere.
if part '-ffile-prefix-map' 'no folder in the bytes'; then
    for file in "$@" "$build/libholdwater.a"; do
        ! grep -qFe "$root" -e "$build/" "$file" || fail "$file: names the folder it was built in"
        pass
    done
fi
echo "$checks checks passed"

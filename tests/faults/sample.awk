# sample.awk - of a file of cases every so many (-v each=N), and all that leave a file for others.
/^\$ / { keep = ++n % each == 1 || /[^0-9]>[^&]|--log|^\$ (printf|cat|cp|mkdir|cd|rm|ln|export)/ }
/^# / || /^#$/ { keep = 0 }
keep

# Puts a table into a page of src/site/markdown, between the lines <!-- begin NAME --> and <!-- end NAME -->. To be sourced.
#
#   site_table PAGE NAME < table
site_table() {
    local page=src/site/markdown/$1.md table
    table=$(mktemp)
    cat > "$table"
    awk -v name="$2" -v table="$table" '
        $0 == "<!-- end " name " -->" {inside = 0}
        !inside {print}
        $0 == "<!-- begin " name " -->" {inside = 1; while ((getline line < table) > 0) print line}' "$page" > "$page.new"
    mv "$page.new" "$page"
    rm -f "$table"
}

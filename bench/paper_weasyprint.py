#!/usr/bin/python3
"""The walkdown's pages through Debian's weasyprint, beside bench/paper_bench.cc: as many rows of the
same text, as a table whose heads repeat. Prints pages, seconds and peak memory of this process."""
import resource
import sys
import time

rows = int(sys.argv[1]) if len(sys.argv) > 1 else 900
start = time.perf_counter()
import weasyprint  # noqa: E402  (its loading is timed apart)
loaded = time.perf_counter() - start

body = "".join(
    f"<tr><td><b>FH-A{i:03}</b></td><td>handhole, front wall lower header</td><td>1.200</td>"
    f"<td>45.78</td><td>&#9744;</td><td>&#9744;</td><td></td><td></td></tr>" for i in range(rows))
page = ("<style>@page{size:A4;margin:19mm 14mm 29mm;@bottom-right{content:'page ' counter(page) ' of '"
        " counter(pages)}}table{width:100%;border-collapse:collapse;font:8pt 'DejaVu Sans Condensed'}"
        "td{border-bottom:.3pt solid #555;height:5.6mm}thead{display:table-header-group}</style>"
        "<table><thead><tr><th>place to look<th>what<th>level, m<th>pressure, bar gauge<th>dry<th>leaking"
        f"<th>drops/min<th>initials</tr></thead>{body}</table>")
start = time.perf_counter()
document = weasyprint.HTML(string=page).render()
document.write_pdf("/dev/null")
print(f"weasyprint {weasyprint.__version__}: {len(document.pages)} pages of {rows} rows in "
      f"{time.perf_counter() - start:.2f} s, loading apart {loaded:.2f} s, "
      f"peak {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB")

# Flies a ready skill by the shell and reads its rows: python3 docs/examples/fly.py [COMMAND ...]. A model, not coaching advice.
import csv, json, subprocess, sys, tempfile, pathlib

command = sys.argv[1:] or ["npx", "shapeflight"]
folder = pathlib.Path(tempfile.mkdtemp())
subprocess.run([*command, "fly", "back-tuck", "--segments", str(folder / "s.csv"), "--numeric",
                "--summary", str(folder / "s.json")], check=True, stdout=subprocess.DEVNULL)
rows = [{k: float(v) for k, v in row.items()} for row in csv.DictReader(open(folder / "s.csv"))]
made = json.loads((folder / "s.json").read_text())["provenance"]
print(made["program"], len(rows), "rows; highest", round(max(row["comy"] for row in rows), 3), "m")

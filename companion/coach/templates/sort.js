"use strict";
(() => {
  const table = document.getElementById("caseload");
  if (!table) return;
  const body = table.tBodies[0], first = [...body.rows], heads = [...table.tHead.rows[0].cells];
  const said = document.getElementById("sorted");
  const value = (row, n) => row.cells[n].dataset.sort;
  const order = (a, b) => {
    const one = Number(a), other = Number(b);
    return a !== "" && b !== "" && !isNaN(one) && !isNaN(other) ? one - other : a.localeCompare(b);
  };
  heads.forEach((head, n) => {
    const button = document.createElement("button"), name = head.textContent;
    button.type = "button";
    button.textContent = name;
    head.replaceChildren(button);
    head.setAttribute("aria-sort", "none");
    button.addEventListener("click", () => {
      const down = head.getAttribute("aria-sort") === "ascending";
      const rows = [...first].sort((a, b) => {
        const one = value(a, n), other = value(b, n);
        if (one === "" || other === "") return (one === "") - (other === "");
        return down ? order(other, one) : order(one, other);
      });
      heads.forEach((other) => other.setAttribute("aria-sort", "none"));
      head.setAttribute("aria-sort", down ? "descending" : "ascending");
      body.append(...rows);
      said.textContent = `Sorted by ${name}, ${down ? "descending" : "ascending"}.`;
    });
  });
  document.querySelectorAll(".sorts").forEach((one) => { one.classList.remove("sorts"); });
})();

(function () {
  "use strict";

  var list = document.getElementById("list");
  var words = JSON.parse(document.getElementById("words").textContent);
  var items = Array.prototype.slice.call(list.querySelectorAll("li[data-key]"));
  var money = {
    places: Number(list.dataset.places),
    before: list.dataset.before,
    after: list.dataset.after,
    point: list.dataset.point,
    group: list.dataset.group
  };
  var numbers = listNumbers(money, words);
  var filled = numbers.filled, plain = numbers.plain, show = numbers.show;
  var readMinor = numbers.readMinor, readQuantity = numbers.readQuantity;
  var place = "estimator.list." + list.dataset.job + "." + list.dataset.list;
  var kept = remembered();
  var cannotKeep = false;
  var held = { any: false, said: "" };

  function byId(id) { return document.getElementById(id); }

  function empty() { return { ticks: {}, had: {}, paid: {}, bought: {}, receipts: {} }; }

  function remembered() {
    var found = empty(), read = null;
    try { read = JSON.parse(localStorage.getItem(place)); } catch (error) { read = null; }
    Object.keys(found).forEach(function (name) {
      if (read && typeof read[name] === "object" && read[name]) { found[name] = read[name]; }
    });
    return found;
  }

  function remember() {
    try {
      localStorage.setItem(place, JSON.stringify(kept));
    } catch (error) {
      if (!cannotKeep) {
        say(words.notKept);
      }
      cannotKeep = true;
    }
  }

  function say(text) { byId("status").textContent = text; }

  /* What the fields say. */

  function stateOf(item) {
    var key = item.dataset.key;
    var read = readMinor(kept.paid[key] || ""), typed = kept.bought[key];
    var many = typed ? readQuantity(typed) : { quantity: item.dataset.quantity };
    return {
      item: item,
      key: key,
      buy: item.dataset.kind === "buy",
      got: Boolean(kept.ticks[key]),
      had: Boolean(kept.had[key]),
      cost: item.dataset.cost === "" ? null : Number(item.dataset.cost),
      quantity: many.quantity || "",
      what: whatOf(item.dataset, many.quantity),
      paid: "minor" in read && !many.wrong ? read.minor : null,
      wrong: read.wrong || "",
      wrongQuantity: many.wrong || ""
    };
  }

  /* The name tells what the list wanted; where another quantity was bought, it tells that too. */

  function whatOf(data, quantity) {
    if (!quantity || Number(quantity) === Number(data.quantity)) { return data.what; }
    return filled(words.otherQuantity, { what: data.what, quantity: quantity.replace(".", money.point), unit: data.unit });
  }

  function showItem(state) {
    state.item.classList.toggle("done", state.got || state.had);
    state.item.querySelector(".got").checked = state.got;
    if (!state.buy) { return; }
    state.item.querySelector(".told").hidden = !state.had;
    state.item.querySelector(".had").checked = state.had;
    showWrong(state.item.querySelector(".price"), state.wrong);
    showWrong(state.item.querySelector(".many"), state.wrongQuantity);
    if (state.wrongQuantity) { state.item.querySelector("details").open = true; }
  }

  function showWrong(field, wrong) {
    if (wrong) { field.setAttribute("aria-invalid", "true"); } else { field.removeAttribute("aria-invalid"); }
    var told = byId(field.getAttribute("aria-describedby"));
    if (told.textContent !== wrong) { told.textContent = wrong; }
  }

  function total(states, name) {
    return states.reduce(function (sum, state) { return sum + (state[name] || 0); }, 0);
  }

  function refresh() {
    var states = items.map(stateOf);
    states.forEach(showItem);
    var bought = states.filter(function (state) { return state.buy && !state.had; });
    var got = states.filter(function (state) { return state.got || state.had; }).length;
    var priced = bought.filter(function (state) { return state.paid !== null; });
    byId("sum").textContent = filled(words.sum, {
      got: got, all: states.length, paid: show(total(priced, "paid")), cost: show(total(bought, "cost"))
    });
    byId("against").textContent = against(priced);
    var csv = byId("as-csv").checked;
    byId("out").value = csv ? asCsv(states) : asToml(priced);
    held = inText(csv, states, bought, priced);
    byId("held").textContent = held.said;
    remember();
  }

  /* How much the text holds, and what is not in it: nobody shall find that out at month end. */

  function isUnread(state) { return Boolean(state.wrong || state.wrongQuantity); }

  function inText(csv, states, bought, priced) {
    var there = csv ? states : priced;
    var unread = bought.filter(isUnread);
    var unpriced = bought.filter(function (state) { return state.got && state.paid === null && !isUnread(state); });
    var badTax = shops().filter(function (shop) {
      return bought.some(function (state) { return state.item.dataset.supplier === shop; }) && readMinor(receiptOf(shop).tax).wrong;
    });
    var parts = [there.length ? filled(words.held, { count: there.length }) : words.nothing];
    if (unpriced.length && !csv) { parts.push(filled(words.unpriced, { count: unpriced.length })); }
    if (unread.length + badTax.length) { parts.push(filled(words.unread, { count: unread.length + badTax.length })); }
    return { any: there.length > 0, said: parts.join(" ") };
  }

  function against(priced) {
    var both = priced.filter(function (state) { return state.cost !== null; });
    if (!both.length) { return words.noPrice; }
    var paid = total(both, "paid"), cost = total(both, "cost"), more = paid - cost;
    var sentence = words[both.length === 1 ? "one" : "several"][more === 0 ? "expected" : more > 0 ? "more" : "less"];
    var apart = show(Math.abs(more));
    return filled(sentence, { count: both.length, cost: show(cost), paid: show(paid), more: apart, less: apart });
  }

  /* Receipts: one for each shop on the list. */

  function shops() {
    var found = [];
    items.forEach(function (item) {
      if (item.dataset.kind === "buy" && found.indexOf(item.dataset.supplier) < 0) { found.push(item.dataset.supplier); }
    });
    return found;
  }

  function receiptOf(shop) {
    return Object.assign({ shop: shop, number: "", date: today(), tax: "" }, kept.receipts[shop] || {});
  }

  function today() {
    var now = new Date();
    function two(number) { return (number < 10 ? "0" : "") + number; }
    return now.getFullYear() + "-" + two(now.getMonth() + 1) + "-" + two(now.getDate());
  }

  function receiptFields(shop, at) {
    var box = document.createElement("fieldset"), legend = document.createElement("legend");
    legend.textContent = shop ? filled(words.receipt, { shop: shop }) : words.anotherShop;
    box.appendChild(legend);
    [["shop", "text"], ["number", "text"], ["date", "date"], ["tax", "text"]].forEach(function (field) {
      var label = document.createElement("label"), input = document.createElement("input");
      input.id = "r" + at + field[0];
      label.htmlFor = input.id;
      label.textContent = words[field[0]];
      input.type = field[1];
      input.autocomplete = "off";
      input.maxLength = 80;
      if (field[0] === "tax") { input.inputMode = "decimal"; }
      input.value = receiptOf(shop)[field[0]];
      input.addEventListener("input", function () {
        kept.receipts[shop] = receiptOf(shop);
        kept.receipts[shop][field[0]] = input.value;
        refresh();
      });
      box.appendChild(label);
      box.appendChild(input);
    });
    return box;
  }

  function quoted(text) {
    return JSON.stringify(text).replace(/\u007f/g, "\\u007f");
  }

  function asToml(priced) {
    var lines = [];
    shops().forEach(function (shop) {
      var own = priced.filter(function (state) { return state.item.dataset.supplier === shop; });
      if (!own.length) { return; }
      var receipt = receiptOf(shop), tax = readMinor(receipt.tax);
      lines.push("[[receipts]]");
      lines.push("date = " + (/^[0-9]{4}-[0-9]{2}-[0-9]{2}$/.test(receipt.date) ? receipt.date : today()));
      lines.push("supplier = " + quoted(receipt.shop || words.writeShop));
      lines.push("doc_no = " + quoted(receipt.number || words.writeNumber));
      if ("minor" in tax) { lines.push("tax = " + plain(tax.minor, ".")); }
      lines.push("lines = [");
      own.forEach(function (state) {
        var data = state.item.dataset;
        lines.push("  { description = " + quoted(state.what) + ", amount = " + plain(state.paid, ".") +
          ", item = " + quoted(data.item) + ", quantity = " + state.quantity + " },");
      });
      lines.push("]", "");
    });
    return lines.length ? lines.join("\n") : "# " + words.noPrice + "\n";
  }

  /* The head of a close-out file; the lines alone are copied into one that is there already. */

  function closeOutHead() {
    var file = list.dataset.file;
    return [
      "format = 1", "", "[close_out]",
      "job = " + quoted(list.dataset.job),
      "date = " + today(),
      (file ? "estimate = " + quoted(file) : "# " + words.putEstimate), "", ""
    ].join("\n");
  }

  function cell(text) {
    var guarded = /^[=+\-@\t\r]/.test(text) ? "'" + text : text;
    return /[",\n\r]/.test(guarded) ? '"' + guarded.replace(/"/g, '""') + '"' : guarded;
  }

  /* The tax of a receipt stands once, in its first row, so that the column adds up. */

  function asCsv(states) {
    var rows = [words.columns.map(cell).join(",")], taxed = {};
    states.forEach(function (state) {
      var data = state.item.dataset, shop = data.supplier;
      var bought = state.buy && !state.had && (state.paid !== null || state.got);
      var receipt = bought ? receiptOf(shop) : { shop: shop, number: "", date: "", tax: "" };
      var tax = taxed[shop] ? {} : readMinor(receipt.tax);
      taxed[shop] = taxed[shop] || bought;
      rows.push([cell(state.what), cell(data.item), state.quantity, cell(data.unit), cell(receipt.shop),
        state.cost === null ? "" : plain(state.cost, "."), state.paid === null || state.had ? "" : plain(state.paid, "."),
        cell(state.got ? words.yes : words.no), cell(state.had ? words.yes : words.no),
        cell(receipt.number), cell(receipt.date), "minor" in tax ? plain(tax.minor, ".") : ""].join(","));
    });
    return rows.join("\n") + "\n";
  }

  /* Buttons. */

  function copy() {
    var out = byId("out"), copied = words.copied + " " + held.said;
    if (!held.any) { say(held.said); return; }
    function fallBack() {
      out.focus();
      out.select();
      var done = false;
      try { done = document.execCommand("copy"); } catch (error) { done = false; }
      say(done ? copied : words.notCopied);
    }
    if (navigator.clipboard && navigator.clipboard.writeText) {
      navigator.clipboard.writeText(out.value).then(function () { say(copied); }, fallBack);
    } else {
      fallBack();
    }
  }

  function save() {
    if (!held.any) { say(held.said); return; }
    var csv = byId("as-csv").checked;
    var link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([csv ? "" : closeOutHead(), byId("out").value], { type: "text/plain;charset=utf-8" }));
    link.download = filled(words.file, { job: list.dataset.job.replace(/[^A-Za-z0-9_-]+/g, "-") }) + (csv ? ".csv" : ".toml");
    link.click();
    setTimeout(function () { URL.revokeObjectURL(link.href); }, 1000);
    say(filled(words.saved, { file: link.download }) + " " + held.said);
  }

  function forget() {
    if (!window.confirm(words.forget)) { return; }
    kept = empty();
    try { localStorage.removeItem(place); } catch (error) { cannotKeep = true; }
    fill();
    refresh();
    say(words.forgotten);
  }

  function fill() {
    items.forEach(function (item) {
      if (item.dataset.kind !== "buy") { return; }
      item.querySelector(".price").value = kept.paid[item.dataset.key] || "";
      item.querySelector(".many").value = kept.bought[item.dataset.key] || item.dataset.quantity.replace(".", money.point);
    });
    var receipts = byId("receipts");
    receipts.textContent = "";
    shops().forEach(function (shop, at) { receipts.appendChild(receiptFields(shop, at)); });
  }

  items.forEach(function (item) {
    var key = item.dataset.key;
    item.querySelector(".got").addEventListener("change", function (event) {
      kept.ticks[key] = event.target.checked;
      refresh();
    });
    if (item.dataset.kind !== "buy") { return; }
    item.querySelector(".had").addEventListener("change", function (event) {
      kept.had[key] = event.target.checked;
      refresh();
    });
    [["price", "paid"], ["many", "bought"]].forEach(function (field) {
      item.querySelector("." + field[0]).addEventListener("input", function (event) {
        kept[field[1]][key] = event.target.value;
        refresh();
      });
    });
  });
  ["as-toml", "as-csv"].forEach(function (id) { byId(id).addEventListener("change", refresh); });
  byId("copy").addEventListener("click", copy);
  byId("save").addEventListener("click", save);
  byId("forget").addEventListener("click", forget);
  document.querySelectorAll(".scripted").forEach(function (part) { part.hidden = false; });
  fill();
  refresh();
}());

/* Amounts and quantities as people type them, and as they are shown; list.js works with them. */
function listNumbers(money, words) {
  "use strict";

  var MOST_DIGITS = 9;

  function filled(sentence, values) {
    return sentence.replace(/\{(\w+)\}/g, function (place, name) { return values[name]; });
  }

  /* Amounts are whole minor units (cents) from here on: nothing is added as a fraction. */

  function readMinor(text) {
    var shown = text.replace(/[\s\u00a0\u202f'\u2019]/g, "");
    [money.before, money.after].forEach(function (sign) {
      var mark = sign.replace(/[\s\u00a0\u202f]/g, "");
      if (mark) { shown = shown.split(mark).join(""); }
    });
    if (!shown) { return { empty: true }; }
    /* Without a figure before it, a sign can only stand before the decimals. */
    var found = /^([0-9]{1,3}(?:[.,][0-9]{3})+|[0-9]+)(?:([.,])([0-9]*))?$/.exec(shown) ||
      /^()([.,])([0-9]+)$/.exec(shown);
    if (!found) { return { wrong: filled(words.noAmount, { example: example() }) }; }
    var whole = found[1], sign = found[2] || "", parts = found[3] || "";
    var groups = whole.replace(/[0-9]/g, "");
    var mixed = groups && (groups.split(groups[0]).join("") || groups[0] === sign);
    /* One sign before three figures is a thousand, unless it is the local decimal sign. */
    if (groups.length === 1 && !sign && groups === money.point) {
      parts = whole.split(groups)[1];
      whole = whole.split(groups)[0];
    } else if (groups.length === 1 && !sign && groups !== money.group) {
      mixed = true;
    }
    if (mixed || parts.length > money.places) {
      return { wrong: filled(words.twoWays, { example: example() }) };
    }
    var digits = whole.replace(/[.,]/g, "");
    if (digits.replace(/^0+/, "").length > MOST_DIGITS) { return { wrong: words.tooMuch }; }
    while (parts.length < money.places) { parts += "0"; }
    return { minor: Number(digits + parts) };
  }

  /* How many were bought: a number above zero, as a close-out file writes it. */

  function readQuantity(text) {
    var shown = text.replace(/[\s\u00a0\u202f]/g, "");
    var found = /^([0-9]{0,9})(?:([.,])([0-9]{0,6}))?$/.exec(shown);
    if (!found || !/[1-9]/.test(shown)) { return { wrong: words.noQuantity }; }
    var sign = found[2] || "", parts = found[3] || "";
    if (sign && sign !== money.point && parts.length === 3 && found[1]) {
      return { wrong: filled(words.twoWays, { example: found[1] + parts }) };
    }
    var whole = found[1].replace(/^0+(?=[0-9])/, "") || "0";
    return { quantity: parts ? whole + "." + parts : whole };
  }

  function example() { return plain(money.places ? 1250 * Math.pow(10, money.places - 2) : 1250, money.point); }

  function plain(minor, point) {
    var digits = String(minor);
    while (digits.length <= money.places) { digits = "0" + digits; }
    if (!money.places) { return digits; }
    var cut = digits.length - money.places;
    return digits.slice(0, cut) + point + digits.slice(cut);
  }

  function show(minor) {
    var digits = plain(Math.abs(minor), ".").split(".");
    var whole = digits[0].replace(/\B(?=([0-9]{3})+$)/g, money.group);
    var text = digits.length > 1 ? whole + money.point + digits[1] : whole;
    return (minor < 0 ? "-" : "") + money.before + text + money.after;
  }

  return { filled: filled, plain: plain, show: show, readMinor: readMinor, readQuantity: readQuantity };
}

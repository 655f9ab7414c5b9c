package bendline.report;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;

/**
 * Writes a drawing without its nested groups: each shape and each word states what it is drawn with and nothing else, which takes
 * half the bytes and lets every element be read by itself.
 */
final class FlatSvg {

    /** What is inherited and where it starts (SVG 1.1, appendix N), fonts as the head of the drawing states them. */
    private static final Map<String, String> INITIAL = initial();

    /** Groups hand it down, though it isn't inherited: a group's transform holds for what is in it. */
    private static final String TRANSFORM = "transform";

    private static final Set<String> WITHOUT_CORNERS = Set.of("line", "circle", "ellipse", "rect");

    private static final Set<String> HINTS = Set.of(
            "color-interpolation",
            "color-rendering",
            "image-rendering",
            "shape-rendering",
            "text-rendering",
            "xml:space",
            "clipPathUnits");

    private static final Pattern BEFORE_COMMAND = Pattern.compile(" (?=[A-Za-z])|(?<=[A-Za-z]) ");

    private final SvgSheet sheet;
    private final Map<String, String> clips = new LinkedHashMap<>();
    private final Set<String> used = new LinkedHashSet<>();
    private final StringBuilder shapes = new StringBuilder();

    FlatSvg(SvgSheet sheet) {
        this.sheet = sheet;
    }

    private static Map<String, String> initial() {
        Map<String, String> out = new TreeMap<>();
        out.put("fill", "black");
        out.put("fill-opacity", "1");
        out.put("font-family", "sans-serif");
        out.put("font-size", "13px");
        out.put("font-style", "normal");
        out.put("font-weight", "normal");
        out.put("stroke", "none");
        out.put("stroke-dasharray", "none");
        out.put("stroke-dashoffset", "0");
        out.put("stroke-linecap", "butt");
        out.put("stroke-linejoin", "miter");
        out.put("stroke-miterlimit", "4");
        out.put("stroke-opacity", "1");
        out.put("stroke-width", "1");
        return out;
    }

    /** The drawing as one element. */
    String write(Element root) {
        Map<String, String> given = with(INITIAL, root.getAttributes());
        given.keySet().retainAll(INITIAL.keySet());
        children(root, given);
        StringBuilder out = new StringBuilder(Words.of(
                "<svg id=\"%s\" xmlns=\"http://www.w3.org/2000/svg\" width=\"%d\" height=\"%d\" viewBox=\"0 0 %d %d\""
                        + " font-family=\"sans-serif\" font-size=\"13px\" role=\"img\" aria-labelledby=\"%s-title\">",
                sheet.id(), sheet.width(), sheet.height(), sheet.width(), sheet.height(), sheet.id()));
        out.append(Words.of("<title id=\"%s-title\">%s</title>", sheet.id(), Html.escaped(sheet.title())));
        if (!used.isEmpty()) {
            out.append("<defs>");
            used.forEach(
                    id -> out.append(Words.of("<clipPath id=\"%s\"><path d=\"%s\"/></clipPath>", id, clips.get(id))));
            out.append("</defs>");
        }
        return out.append(shapes).append("</svg>").toString();
    }

    private void children(Element parent, Map<String, String> given) {
        for (Node n = parent.getFirstChild(); n != null; n = n.getNextSibling()) {
            if (n instanceof Element e) {
                element(e, given);
            }
        }
    }

    private void element(Element e, Map<String, String> given) {
        switch (e.getTagName()) {
            case "defs" -> children(e, given);
            case "clipPath" -> clips.put(e.getAttribute("id"), tight(((Element) e.getFirstChild()).getAttribute("d")));
            case "g" -> children(e, with(given, e.getAttributes()));
            default -> shape(e, with(given, e.getAttributes()));
        }
    }

    private static Map<String, String> with(Map<String, String> given, NamedNodeMap own) {
        Map<String, String> out = new TreeMap<>(given);
        for (int i = 0; i < own.getLength(); i++) {
            String name = own.item(i).getNodeName();
            String value = own.item(i).getNodeValue();
            if (name.equals(TRANSFORM) && given.containsKey(TRANSFORM)) {
                out.put(name, given.get(name) + " " + value);
            } else if (!HINTS.contains(name)) {
                out.put(name, name.equals("font-family") ? value.replace("'", "") : value);
            }
        }
        return out;
    }

    /** What is drawn is filled or stroked, never both, so that its opacity is that of the one; PDFs take no other. */
    private static Map<String, String> paled(Map<String, String> all) {
        String opacity = all.remove("opacity");
        if (opacity != null) {
            String part = "none".equals(all.get("fill")) ? "stroke-opacity" : "fill-opacity";
            all.merge(part, opacity, (a, b) -> Words.of("%.3f", Double.parseDouble(a) * Double.parseDouble(b)));
        }
        return all;
    }

    private void shape(Element e, Map<String, String> inherited) {
        String tag = e.getTagName();
        Map<String, String> all = paled(inherited);
        if (e.getFirstChild() instanceof Element) {
            throw new IllegalArgumentException("a <" + tag + "> with parts can't be written flat");
        }
        shapes.append('<').append(tag);
        all.forEach((name, value) -> {
            if (needed(tag, name, value, all)) {
                shapes.append(' ')
                        .append(name)
                        .append("=\"")
                        .append(Html.escaped(name.equals("d") ? tight(value) : value))
                        .append('"');
            }
        });
        if (e.hasChildNodes()) {
            shapes.append('>')
                    .append(Html.escaped(e.getTextContent()))
                    .append("</")
                    .append(tag)
                    .append('>');
        } else {
            shapes.append("/>");
        }
    }

    private boolean needed(String tag, String name, String value, Map<String, String> all) {
        if (name.equals("clip-path")) {
            return clipped(value);
        }
        if (value.equals(INITIAL.get(name))) {
            return false;
        }
        if (name.startsWith("font-")) {
            return tag.equals("text");
        }
        if (name.equals("fill") && tag.equals("line")) {
            return false;
        }
        if (name.equals("fill-opacity")) {
            return !"none".equals(all.get("fill"));
        }
        if (name.equals("stroke-miterlimit") && WITHOUT_CORNERS.contains(tag)) {
            return false;
        }
        return !name.startsWith("stroke-") || !"none".equals(all.get("stroke"));
    }

    /** A clip along the edge of the sheet cuts nothing. */
    private boolean clipped(String url) {
        String id = url.replaceAll("url\\(#(.*)\\)", "$1");
        String whole = Words.of("M0 0L%1$d 0L%1$d %2$dL0 %2$dL0 0Z", sheet.width(), sheet.height());
        boolean cuts = clips.containsKey(id) && !whole.equals(clips.get(id));
        if (cuts) {
            used.add(id);
        }
        return cuts;
    }

    private static String tight(String path) {
        return BEFORE_COMMAND.matcher(path).replaceAll("");
    }
}

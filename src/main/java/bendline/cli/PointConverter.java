package bendline.cli;

import bendline.geometry.Point;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads {@code X,Y}, pixels of the upright picture from its top left. */
final class PointConverter implements ITypeConverter<Point> {

    private static final Pattern FORM = Pattern.compile("\\s*(-?\\d+(?:\\.\\d+)?)\\s*,\\s*(-?\\d+(?:\\.\\d+)?)\\s*");

    @Override
    public Point convert(String text) {
        Matcher m = FORM.matcher(text);
        if (!m.matches()) {
            throw new TypeConversionException(
                    "'" + text + "' is not a point; write two numbers with a comma, for example 812,430");
        }
        return new Point(Double.parseDouble(m.group(1)), Double.parseDouble(m.group(2)));
    }
}

package bendline.cli;

import bendline.scene.Setup.Side;
import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads {@code left} or {@code right}. */
final class SideConverter implements ITypeConverter<Side> {

    @Override
    public Side convert(String text) {
        return switch (text.strip().toLowerCase(Locale.ROOT)) {
            case "left" -> Side.LEFT;
            case "right" -> Side.RIGHT;
            default -> throw new TypeConversionException("'" + text + "' is no side; write left or right");
        };
    }
}

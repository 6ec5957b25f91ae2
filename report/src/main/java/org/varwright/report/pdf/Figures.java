package org.varwright.report.pdf;

import com.openhtmltopdf.extend.FSObjectDrawer;
import com.openhtmltopdf.extend.FSObjectDrawerFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.w3c.dom.Element;

/** The figures of one report, by the number under which the page knows them. */
final class Figures implements FSObjectDrawerFactory {
    static final String TYPE = "application/x-figure";

    private final List<Picture> pictures = new ArrayList<>();

    /** Keeps a figure and gives its number, counted from 1. */
    int add(Picture picture) {
        pictures.add(picture);
        return pictures.size();
    }

    @Override
    public boolean isReplacedObject(Element element) {
        return element.getTagName().equals("object")
                && element.getAttribute("type").equals(TYPE);
    }

    @Override
    public FSObjectDrawer createDrawer(Element element) {
        Picture picture = pictures.get(Integer.parseInt(element.getAttribute("data-figure")) - 1);
        return (e, x, y, width, height, device, context, dotsPerPixel) -> {
            device.drawWithGraphics((float) x, (float) y, (float) width, (float) height, graphics -> {
                double scale = 1.0 / dotsPerPixel;
                picture.draw(graphics, width * scale, height * scale);
            });
            return Map.of();
        };
    }
}

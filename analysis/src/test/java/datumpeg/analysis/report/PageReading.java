package datumpeg.analysis.report;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Reads a page or a drawing back with the XML parser of the JDK. */
public final class PageReading {
  private PageReading() {}

  /** The document; throws if it is not well-formed. */
  public static Document parsed(String text) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
      return factory.newDocumentBuilder().parse(new InputSource(new StringReader(text)));
    } catch (ParserConfigurationException | IOException | SAXException failure) {
      throw new AssertionError("The page is not well-formed: " + failure.getMessage(), failure);
    }
  }

  public static List<Element> elements(Document document, String name) {
    NodeList nodes = document.getElementsByTagName(name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      elements.add((Element) nodes.item(i));
    }
    return elements;
  }

  /** All words of the page in reading order, spaces drawn together. */
  public static String words(Document document) {
    return document.getDocumentElement().getTextContent().replaceAll("\\s+", " ");
  }

  /** A numeric attribute. */
  public static double number(Element element, String attribute) {
    return Double.parseDouble(element.getAttribute(attribute));
  }

  /** Elements drawn with a line of this width. */
  public static List<Element> drawn(Document document, String name, String strokeWidth) {
    return elements(document, name).stream()
        .filter(element -> element.getAttribute("stroke-width").equals(strokeWidth))
        .toList();
  }

  /** The corners of a polygon as x, y pairs. */
  public static List<double[]> corners(Element polygon) {
    List<double[]> corners = new ArrayList<>();
    for (String pair : polygon.getAttribute("points").split(" ")) {
      String[] numbers = pair.split(",");
      corners.add(new double[] {Double.parseDouble(numbers[0]), Double.parseDouble(numbers[1])});
    }
    return corners;
  }
}
